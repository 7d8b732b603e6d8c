// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/capsule.h"

namespace underlawn {

namespace {

double half_chord(double reach, double off) {
  return std::sqrt(std::max(0.0, reach * reach - off * off));
}

// Largest x of the capsule at height y, which it is known to reach. The right side is a straight line
// parallel to the segment between two arcs about its ends; a is the lower end.
double right_side(Point a, Point b, double reach, double y) {
  const double rise = b.y - a.y, run = b.x - a.x;
  const double long_ = std::sqrt(run * run + rise * rise);
  if (long_ == 0) return a.x + half_chord(reach, y - a.y);
  const double drop = -reach * run / long_;  // of the straight side against the segment
  if (y <= a.y + drop && (rise > 0 || run < 0)) return a.x + half_chord(reach, y - a.y);
  if (y >= b.y + drop || rise <= 0) return std::max(a.x, b.x) + half_chord(reach, y - b.y);
  return a.x + reach * rise / long_ + (y - a.y - drop) * run / rise;
}

}  // namespace

std::optional<Interval> extent_along_x(const Capsule& c, double low, double high) {
  const bool up = c.a.y <= c.b.y;
  const Point a = up ? c.a : c.b, b = up ? c.b : c.a;
  if (high < a.y - c.reach || low > b.y + c.reach) return std::nullopt;
  const double bottom = std::max(low, a.y - c.reach), top = std::min(high, b.y + c.reach);
  // A convex side is farthest out at the height of the farther end, or as near to it as the strip lets.
  const double at_right = std::clamp(a.x > b.x ? a.y : b.y, bottom, top);
  const double at_left = std::clamp(a.x < b.x ? a.y : b.y, bottom, top);
  const double right = right_side(a, b, c.reach, at_right);
  const double left = -right_side({-a.x, a.y}, {-b.x, b.y}, c.reach, at_left);
  return Interval{left, right};
}

std::optional<Interval> extent_along_y(const Capsule& c, double low, double high) {
  return extent_along_x({{c.a.y, c.a.x}, {c.b.y, c.b.x}, c.reach}, low, high);
}

std::vector<Interval> gaps(std::vector<Interval>& blocked, Interval within) {
  std::sort(blocked.begin(), blocked.end(), [](const Interval& l, const Interval& r) {
    return l.low < r.low || (l.low == r.low && l.high < r.high);
  });
  std::vector<Interval> free;
  double from = within.low;
  for (const Interval& b : blocked) {
    if (b.low >= within.high) break;
    if (b.low >= from) free.push_back({from, b.low});
    from = std::max(from, b.high);
  }
  if (from <= within.high) free.push_back({from, within.high});
  return free;
}

}  // namespace underlawn
