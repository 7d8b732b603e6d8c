// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/way_words.h"

#include <cmath>
#include <numbers>
#include <utility>

#include "base/say.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr double kHalf = std::numbers::pi;

// Clockwise from north, 0..2 pi.
double bearing(const Site& site, double direction) {
  const double b = std::fmod(site.north - direction, 2 * kHalf);
  return b < 0 ? b + 2 * kHalf : b;
}

std::string circuits(int n) {
  return n == 1 ? say("{} circuit", n) : say("{} circuits", n);
}

Point middle(const Trench& t) {
  return 0.5 * (t.head + t.end);
}

Point centre(const std::vector<Point>& points) {
  Point sum;
  for (Point p : points) sum = sum + p;
  return 1.0 / static_cast<double>(points.size()) * sum;
}

// The middles of the trenches in two heaps, about the two that are farthest apart.
std::pair<std::vector<Point>, std::vector<Point>> two_heaps(const Layout& layout) {
  Point a, b;
  double most = -1;
  for (const Trench& s : layout.trenches)
    for (const Trench& t : layout.trenches)
      if (distance(middle(s), middle(t)) > most)
        most = distance(middle(s), middle(t)), a = middle(s), b = middle(t);
  std::pair<std::vector<Point>, std::vector<Point>> heaps;
  for (const Trench& t : layout.trenches)
    (distance(middle(t), a) <= distance(middle(t), b) ? heaps.first : heaps.second).push_back(middle(t));
  return heaps;
}

// A bearing of a line, 0..180 degrees.
std::string line_degrees(const Site& site, double direction) {
  return print_quantity(Quantity::angle, std::fmod(bearing(site, direction), kHalf), UnitSystem::metric,
                        Fineness::coarse);
}

}  // namespace

std::string compass_line(const Site& site, double direction) {
  const double b = std::fmod(bearing(site, direction), kHalf);
  switch (std::lround(b / (kHalf / 4)) % 4) {
    case 0:
      return say("from north to south");
    case 1:
      return say("from north-east to south-west");
    case 2:
      return say("from east to west");
  }
  return say("from south-east to north-west");
}

std::string other_side_words(const Site& site, Point outward) {
  return say("Nothing on the {} side of the house", compass_word(site, outward));
}

std::string other_direction_words(const Site& site, double direction, double now) {
  const std::string then_line = compass_line(site, direction), now_line = compass_line(site, now);
  if (then_line != now_line) return say("Trenches {} instead of {}", then_line, now_line);
  return say("Trenches on a bearing of {} instead of {}", line_degrees(site, direction),
             line_degrees(site, now));
}

std::string groups_words(int groups) {
  return groups == 1 ? say("One group of trenches on one header")
                     : say("Two groups of trenches, each with a header of its own");
}

static std::string on_either_side(FeatureKind kind) {
  if (kind == FeatureKind::house) return say("Two groups, on either side of the house");
  if (kind == FeatureKind::drive) return say("Two groups, on either side of the drive");
  return say("Two groups, on either side of the drain field");
}

std::string told_of_groups(const Site& site, const Layout& layout, const std::string& usual) {
  const auto [first, second] = two_heaps(layout);
  if (first.empty() || second.empty()) return usual;
  const Polyline between = {centre(first), centre(second)};
  for (FeatureKind kind : {FeatureKind::house, FeatureKind::drive, FeatureKind::drain_field})
    for (const Feature& f : site.features)
      if (f.kind == kind && line_area_distance(between, f.points) < kSamePlace) return on_either_side(kind);
  return usual;
}

std::string run_coil_words(bool coil) {
  return coil ? say("A coil in the supply trench")
              : say("No coil in the supply trench, all of them in the field");
}

std::string fewer_deeper_words(const Wishes& now, const Wishes& then, UnitSystem units) {
  const auto deep = [&](double d) { return print_quantity(Quantity::length, d, units, Fineness::coarse); };
  return say("{} {} deep instead of {} at {}", circuits(then.circuits), deep(then.trench_depth),
             std::to_string(now.circuits), deep(now.trench_depth));
}

std::string upright_words(const Wishes& then, UnitSystem units) {
  const std::string wide = print_quantity(Quantity::length, then.trench_width, units, Fineness::coarse);
  return then.pattern == CoilPattern::upright_coil
             ? say("Upright coils in trenches {} wide, cut by a chain trencher", wide)
             : say("Coils flat on the floor of trenches {} wide", wide);
}

std::string metres_words(const Wishes& then, UnitSystem units) {
  const auto shown = [&](double d) { return print_quantity(Quantity::length, d, units, Fineness::coarse); };
  return say("As much trench as fits, each between {} and {}", shown(then.least_length),
             shown(then.most_length));
}

}  // namespace underlawn
