// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/locked_in_place.h"

namespace underlawn {

namespace {

constexpr double kSamePlace = 1e-6;  // m

bool same_line(const Polyline& a, const Polyline& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (!(distance(a[i], b[i]) < kSamePlace)) return false;
  return true;
}

bool lies_at(const Trench& t, const Trench& locked) {
  return t.role == TrenchRole::field && !t.locked && same_line(middle_line(t), middle_line(locked)) &&
         std::abs(t.depth - locked.depth) < kSamePlace &&
         std::abs(t.coil.coil_length - locked.coil.coil_length) < kSamePlace;
}

}  // namespace

bool lock_in_place(std::vector<Trench>& trenches, const std::vector<Trench>& locked) {
  std::vector<Trench> marked = trenches;
  for (const Trench& held : locked) {
    const auto at =
        std::find_if(marked.begin(), marked.end(), [&](const Trench& t) { return lies_at(t, held); });
    if (at == marked.end()) return false;
    at->head = held.head;
    at->end = held.end;
    at->bends = held.bends;
    at->locked = true;
  }
  trenches = std::move(marked);
  return true;
}

}  // namespace underlawn
