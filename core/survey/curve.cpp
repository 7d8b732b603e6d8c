// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/curve.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>

#include "base/say.h"

namespace underlawn {

namespace {

using std::numbers::pi;

constexpr double kLargestRadius = 1e6;  // m
constexpr double kLeastChord = 1e-3;    // m
constexpr double kLeastAngle = 1e-7;    // rad

std::string shown(double metres, UnitSystem units) {
  return units == UnitSystem::us
             ? say("{} ft", std::to_string(std::round(metres / 0.3048 * 100) / 100).substr(0, 12))
             : print_quantity(Quantity::length, metres, units, Fineness::fine);
}

Trouble short_of(const std::string& what, const std::string& advice) {
  return {"deed_curve_short", say("the curve"), say("without {}", what), say("given in full"), advice};
}

// The turn x of which sin(x / 2) / (x / 2) is the ratio of chord to arc.
double turn_of(double chord, double arc) {
  const double ratio = chord / arc;
  const auto off = [ratio](double half) { return std::sin(half) / half - ratio; };
  boost::math::tools::eps_tolerance<double> close(50);
  std::uintmax_t steps = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(off, kLeastAngle, pi - 1e-9, close, steps);
  return low + high;  // twice the middle
}

struct Size {
  double radius = 0, delta = 0;
};

Result<Size> size_of(const CurveGiven& g, UnitSystem units) {
  if (g.chord && !(*g.chord > kLeastChord))
    return refuse({"deed_curve_chord", say("the chord"), shown(*g.chord, units), say("more than nothing"),
                   say("Check it with the deed.")});
  if (g.chord && g.radius && *g.chord > 2 * *g.radius * (1 + 1e-4))
    return refuse({"deed_curve_chord", say("the chord"), shown(*g.chord, units),
                   say("at most the curve's diameter, {}", shown(2 * *g.radius, units)),
                   say("Check radius and chord.")});
  if (g.chord && g.arc && *g.chord > *g.arc + kCurveSlack)
    return refuse({"deed_curve_chord", say("the chord"), shown(*g.chord, units),
                   say("at most the arc, {}", shown(*g.arc, units)), say("Check arc and chord.")});
  if (g.radius && g.delta) return Size{*g.radius, *g.delta};
  if (g.radius && g.arc) return Size{*g.radius, *g.arc / *g.radius};
  if (g.radius && g.chord) return Size{*g.radius, 2 * std::asin(std::min(1.0, *g.chord / (2 * *g.radius)))};
  if (g.delta && g.chord) return Size{*g.chord / (2 * std::sin(*g.delta / 2)), *g.delta};
  if (g.delta && g.arc) return Size{*g.arc / *g.delta, *g.delta};
  if (g.chord && g.arc && *g.arc > *g.chord * (1 + 1e-9)) {
    const double delta = turn_of(*g.chord, *g.arc);
    return Size{*g.arc / delta, delta};
  }
  return refuse(short_of(
      say("two of radius, central angle, arc and chord"),
      say("Write it like R=50 ft, L=30.20 ft, or a radius of 50 feet and a central angle of 34°36'.")));
}

struct Compared {
  std::string thing;
  double said, follows;
};

// What is given beyond need has to agree with what follows from the rest.
Result<void> agrees(const CurveGiven& g, const Size& s, UnitSystem units) {
  const double arc = s.radius * s.delta, chord = chord_of(s.radius, s.delta);
  std::vector<Compared> all;
  if (g.arc) all.push_back({say("the arc"), *g.arc, arc});
  if (g.chord) all.push_back({say("the chord"), *g.chord, chord});
  if (g.delta) all.push_back({say("the arc by the central angle"), s.radius * *g.delta, arc});
  if (g.radius) all.push_back({say("the radius"), *g.radius, s.radius});
  for (const Compared& c : all)
    if (std::abs(c.said - c.follows) > std::max(kCurveSlack, std::abs(c.follows) / 2000))
      return refuse({"deed_curve_disagrees", c.thing, shown(c.said, units),
                     say("{}, as follows from the rest of the curve", shown(c.follows, units)),
                     say("Compare radius, central angle, arc and chord with the deed.")});
  return {};
}

// -pi to pi.
double turned(double from, double to) {
  return std::remainder(to - from, 2 * pi);
}

std::optional<double> azimuth_in_of(const CurveGiven& g, std::optional<double> before) {
  if (g.azimuth_in) return *g.azimuth_in;
  if (!g.not_tangent && before) return *before;
  return std::nullopt;
}

// Left or right: said, or by the side the hollow looks to, or by how the chord leaves the tangent.
std::optional<bool> side_of(const CurveGiven& g, std::optional<double> in) {
  if (g.left) return *g.left;
  const auto along = g.chord_azimuth ? g.chord_azimuth : in;
  if (g.hollow_side && along && std::abs(std::cos(turned(*along, *g.hollow_side))) < 0.995)
    return turned(*along, *g.hollow_side) < 0;
  if (g.to_centre && along) return turned(*along, *g.to_centre) < 0;
  if (g.chord_azimuth && in && std::abs(turned(*in, *g.chord_azimuth)) > 1e-4)
    return turned(*in, *g.chord_azimuth) < 0;
  return std::nullopt;
}

}  // namespace

double in_turn(double azimuth) {
  const double turn = std::fmod(azimuth, 2 * pi);
  return turn < 0 ? turn + 2 * pi : turn;
}

double chord_of(double radius, double delta) {
  return 2 * radius * std::sin(delta / 2);
}

Result<Curve> curve_from(const CurveGiven& g, std::optional<double> before, UnitSystem units) {
  const auto size = size_of(g, units);
  if (!size) return refuse(size.error());
  const bool sound = size->radius > 1e-3 && size->radius <= kLargestRadius && size->delta > kLeastAngle &&
                     size->delta < 2 * pi - kLeastAngle;
  if (!sound)
    return refuse({"deed_curve_size", say("the curve"), say("of radius {}", shown(size->radius, units)),
                   say("a circle's part with a radius of up to {}", shown(kLargestRadius, units)),
                   say("Check radius, central angle, arc and chord.")});
  if (const auto ok = agrees(g, *size, units); !ok) return refuse(ok.error());
  auto in = azimuth_in_of(g, before);
  const auto left = side_of(g, in);
  if (left && g.to_centre && !g.azimuth_in) in = in_turn(*g.to_centre + (*left ? pi / 2 : -pi / 2));
  if (!left)
    return refuse(short_of(say("its side"), say("Say whether it curves to the left or to the right.")));
  const double half = (*left ? -1 : 1) * size->delta / 2;
  Curve c{size->radius, size->delta, size->radius * size->delta, chord_of(size->radius, size->delta)};
  c.left = *left;
  if (g.chord_azimuth)
    c.chord_azimuth = in_turn(*g.chord_azimuth);
  else if (in)
    c.chord_azimuth = in_turn(*in + half);
  else
    return refuse(short_of(say("a direction"),
                           before ? say("Give the chord's bearing, for the curve is said not to be tangent.")
                                  : say("Give the chord's bearing, for no course leads up to the curve.")));
  c.azimuth_in = in_turn(c.chord_azimuth - half);
  c.azimuth_out = in_turn(c.chord_azimuth + half);
  return c;
}

}  // namespace underlawn
