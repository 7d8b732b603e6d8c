// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/fewer_bends.h"

#include <cmath>
#include <optional>

namespace underlawn {
namespace {

// Where leg a prolonged forward meets leg b prolonged backward.
std::optional<Point> meeting(const Segment& a, const Segment& b) {
  const Point d = a.b - a.a, e = b.b - b.a;
  const double turn = cross(d, e);
  if (std::abs(turn) < 0.02 * norm(d) * norm(e)) return std::nullopt;
  const double ahead = cross(b.a - a.a, e) / turn, behind = cross(b.a - a.a, d) / turn;
  if (ahead < 1 || behind > 0) return std::nullopt;
  return a.a + ahead * d;
}

bool open_way(const Polyline& line, const Sight& free) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(line[i - 1], line[i]) < kSamePlace || !free.sees(line[i - 1], line[i])) return false;
  return true;
}

// The string of short legs from point `first` to point `last`, as one corner or two.
std::optional<Polyline> squared(const Polyline& line, std::size_t first, std::size_t last,
                                const Sight& free) {
  const Segment before{line[first - 1], line[first]}, after{line[last], line[last + 1]};
  if (const auto x = meeting(before, after))
    if (Polyline one{before.a, *x, after.b}; open_way(one, free)) return Polyline{*x};
  for (std::size_t k = first; k < last; ++k) {
    const Segment middle{line[k], line[k + 1]};
    const auto x = meeting(before, middle), y = meeting(middle, after);
    if (!x || !y) continue;
    if (Polyline two{before.a, *x, *y, after.b}; open_way(two, free)) return Polyline{*x, *y};
  }
  return std::nullopt;
}

}  // namespace

Polyline with_fewer_bends(const Polyline& line, const Sight& free) {
  Polyline out = line;
  for (std::size_t first = 1; first + 2 < out.size(); ++first) {
    std::size_t last = first;
    while (last + 2 < out.size() && distance(out[last], out[last + 1]) < kShortLeg) ++last;
    // The longest string from here that can be mended.
    for (; last > first; --last) {
      const auto corners = squared(out, first, last, free);
      if (!corners || corners->size() > last - first) continue;
      out.erase(out.begin() + static_cast<long>(first), out.begin() + static_cast<long>(last) + 1);
      out.insert(out.begin() + static_cast<long>(first), corners->begin(), corners->end());
      break;
    }
  }
  return out;
}

}  // namespace underlawn
