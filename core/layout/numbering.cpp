// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/numbering.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace underlawn {

namespace {

bool house_is_low(const std::vector<Trench>& trenches, Point across, Point house) {
  double low = 1e300, high = -1e300;
  for (const Trench& t : trenches) {
    if (t.role == TrenchRole::supply) continue;
    low = std::min(low, dot(across, t.head));
    high = std::max(high, dot(across, t.head));
  }
  return std::abs(dot(across, house) - low) <= std::abs(dot(across, house) - high);
}

}  // namespace

void number_across_field(std::vector<Trench>& trenches, double angle,
                         const std::optional<EntryPoint>& entry) {
  if (trenches.empty()) return;
  const Point u = direction(angle), across = left_normal(u);
  const Point house = entry ? entry->at : trenches.front().head;
  const double side = house_is_low(trenches, across, house) ? 1 : -1;
  const auto key = [&](const Trench& t) {
    // Rows side by side within a centimetre are one row.
    return std::tuple(t.role == TrenchRole::supply, std::round(100 * side * dot(across, t.head)),
                      dot(u, t.head));
  };
  std::stable_sort(trenches.begin(), trenches.end(),
                   [&](const Trench& l, const Trench& r) { return key(l) < key(r); });
  for (std::size_t i = 0; i < trenches.size(); ++i) trenches[i].number = static_cast<int>(i) + 1;
}

void number_by_groups(std::vector<Trench>& trenches, const std::vector<std::size_t>& sizes,
                      const std::optional<EntryPoint>& entry) {
  std::size_t from = 0;
  for (std::size_t size : sizes) {
    const auto begin = trenches.begin() + static_cast<std::ptrdiff_t>(from);
    std::vector<Trench> group(begin, begin + static_cast<std::ptrdiff_t>(size));
    const Point u = group.front().end - group.front().head;
    number_across_field(group, std::atan2(u.y, u.x), entry);
    std::copy(group.begin(), group.end(), begin);
    from += size;
  }
  for (std::size_t i = 0; i < trenches.size(); ++i) trenches[i].number = static_cast<int>(i) + 1;
}

}  // namespace underlawn
