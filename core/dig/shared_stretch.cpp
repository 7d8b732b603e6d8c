// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig.h"

namespace underlawn {

namespace {

struct Span {
  double from = 0, to = 1;  // part of a segment, as fractions of it
  double length() const { return std::max(0.0, to - from); }
};

// Keeps the part of the span where start + fraction * change lies between low and high.
void clip(Span& span, double start, double change, double low, double high) {
  if (change == 0) {
    if (start < low || start > high) span.to = span.from;
    return;
  }
  const double at_low = (low - start) / change, at_high = (high - start) / change;
  span.from = std::max(span.from, std::min(at_low, at_high));
  span.to = std::min(span.to, std::max(at_low, at_high));
}

Span on_floor(Point a, Point b, const Segment& leg, double width) {
  const Point along = unit(leg.b - leg.a);
  const Point across = left_normal(along);
  Span span;
  clip(span, dot(a - leg.a, along), dot(b - a, along), 0, distance(leg.a, leg.b));
  clip(span, dot(a - leg.a, across), dot(b - a, across), -width / 2, width / 2);
  return span;
}

}  // namespace

double stretch_in_supply_trenches(const Polyline& line, const std::vector<Trench>& trenches) {
  double stretch = 0;
  for (const Trench& trench : trenches) {
    if (trench.role != TrenchRole::supply) continue;
    const Polyline floor = middle_line(trench);
    for (std::size_t leg = 1; leg < floor.size(); ++leg) {
      if (distance(floor[leg - 1], floor[leg]) < kSamePlace) continue;
      for (std::size_t i = 1; i < line.size(); ++i)
        stretch += on_floor(line[i - 1], line[i], {floor[leg - 1], floor[leg]}, trench.width).length() *
                   distance(line[i - 1], line[i]);
    }
  }
  return stretch;
}

}  // namespace underlawn
