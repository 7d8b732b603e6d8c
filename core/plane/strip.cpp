// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/strip.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plane/region.h"

namespace underlawn {

Point mitre(Point before, Point after, double half) {
  const Point n = left_normal(before), m = left_normal(after);
  return half / (1 + dot(n, m)) * (n + m);
}

namespace {

// How far along its legs a corner reaches.
double reach(double turn, double half) {
  return half * std::tan(turn / 2);
}

bool plain(const Polyline& line, double half) {
  std::vector<double> reaches(line.size());
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const double turn = turn_at(line, i);
    if (turn > kMitredTurn) return false;
    reaches[i] = reach(turn, half);
  }
  for (std::size_t i = 1; i < line.size(); ++i)
    if (reaches[i - 1] + reaches[i] > distance(line[i - 1], line[i]) - kSamePlace) return false;
  for (std::size_t i = 1; i < line.size(); ++i)
    for (std::size_t j = i + 2; j < line.size(); ++j)
      if (distance(Segment{line[i - 1], line[i]}, Segment{line[j - 1], line[j]}) < 2.0001 * half)
        return false;
  return true;
}

Ring mitred(const Polyline& line, double half) {
  Ring right, left;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Point before = unit(i > 0 ? line[i] - line[i - 1] : line[1] - line[0]);
    const Point after = i + 1 < line.size() ? unit(line[i + 1] - line[i]) : before;
    const Point aside = mitre(before, after, half);
    right.push_back(line[i] - aside);
    left.push_back(line[i] + aside);
  }
  right.insert(right.end(), left.rbegin(), left.rend());
  return right;
}

// What the outside of a corner adds to the rectangles of its legs.
Ring corner(const Polyline& line, std::size_t i, double half) {
  const Point before = unit(line[i] - line[i - 1]), after = unit(line[i + 1] - line[i]);
  const double out = cross(before, after) > 0 ? -half : half;
  Ring ring = {line[i], line[i] + out * left_normal(before)};
  if (turn_at(line, i) <= kMitredTurn) ring.push_back(line[i] + mitre(before, after, out));
  ring.push_back(line[i] + out * left_normal(after));
  return ring;
}

Ring united(const Polyline& line, double width) {
  std::vector<Region> parts;
  for (std::size_t i = 1; i < line.size(); ++i)
    parts.push_back(region_of(rectangle_along({line[i - 1], line[i]}, width)));
  for (std::size_t i = 1; i + 1 < line.size(); ++i)
    if (turn_at(line, i) > 1e-3) parts.push_back(region_of(corner(line, i, width / 2)));
  const Region all = unite(parts);
  const auto largest = std::max_element(all.begin(), all.end(), [](const Polygon& a, const Polygon& b) {
    return area(a.outer) < area(b.outer);
  });
  return largest == all.end() ? rectangle_along({line.front(), line.back()}, width) : largest->outer;
}

// What is no place, or farther off than the clipper reaches, has no corners worth drawing.
bool near_enough(const Polyline& line) {
  constexpr double kReach = 9 * kLargestPlan;
  return std::all_of(line.begin(), line.end(),
                     [](Point p) { return std::abs(p.x) <= kReach && std::abs(p.y) <= kReach; });
}

}  // namespace

double turn_at(const Polyline& line, std::size_t which) {
  if (which == 0 || which + 1 >= line.size()) return 0;
  const Point before = line[which] - line[which - 1], after = line[which + 1] - line[which];
  return std::abs(std::atan2(cross(before, after), dot(before, after)));
}

Polyline without_idle_points(const Polyline& line) {
  if (line.size() <= 2) return line;
  Polyline apart;
  for (Point p : line)
    if (apart.empty() || distance(apart.back(), p) > kSamePlace) apart.push_back(p);
  if (apart.size() > 1 && apart.back() != line.back()) apart.back() = line.back();
  if (apart.size() < 2) return {line.front(), line.back()};
  Polyline kept = {apart.front()};
  for (std::size_t i = 1; i + 1 < apart.size(); ++i) {
    const Point before = apart[i] - kept.back(), after = apart[i + 1] - apart[i];
    const bool straight =
        dot(before, after) > 0 && distance(Segment{kept.back(), apart[i + 1]}, apart[i]) < 1e-7;
    if (!straight) kept.push_back(apart[i]);
  }
  kept.push_back(apart.back());
  return kept;
}

Ring strip_along(const Polyline& drawn, double width) {
  if (!near_enough(drawn)) return rectangle_along({drawn.front(), drawn.back()}, width);
  const Polyline line = without_idle_points(drawn);
  if (line.size() == 2) return rectangle_along({line[0], line[1]}, width);
  return plain(line, width / 2) ? mitred(line, width / 2) : united(line, width);
}

Polyline trimmed(const Polyline& line, double at_start, double at_end) {
  Polyline out = line;
  while (out.size() > 2 && distance(out[0], out[1]) <= at_start) {
    at_start -= distance(out[0], out[1]);
    out.erase(out.begin());
  }
  while (out.size() > 2 && distance(out[out.size() - 2], out.back()) <= at_end) {
    at_end -= distance(out[out.size() - 2], out.back());
    out.pop_back();
  }
  const std::size_t n = out.size();
  const Point first = unit(out[1] - out[0]), last = unit(out[n - 1] - out[n - 2]);
  out.front() = out.front() + at_start * first;
  out.back() = out.back() - at_end * last;
  return out;
}

PlaceAlong place_along(const Polyline& line, double metres) {
  std::size_t leg = 0;
  while (leg + 2 < line.size() && metres > distance(line[leg], line[leg + 1])) {
    metres -= distance(line[leg], line[leg + 1]);
    ++leg;
  }
  return {leg, line[leg] + metres * unit(line[leg + 1] - line[leg])};
}

}  // namespace underlawn
