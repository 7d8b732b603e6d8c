// SPDX-License-Identifier: GPL-3.0-or-later
// A circular curve of a lot line from what a deed says of it.
#pragma once

#include <optional>

#include "base/quantity.h"
#include "base/result.h"

namespace underlawn {

// Lengths m, angles rad, azimuths clockwise from the deed's north.
struct CurveGiven {
  std::optional<double> radius, delta, arc, chord;
  std::optional<double> chord_azimuth;
  std::optional<double> azimuth_in;   // of the tangent where the curve begins
  std::optional<double> to_centre;    // azimuth of the centre from where the curve begins
  std::optional<double> hollow_side;  // azimuth, roughly, that the hollow side looks to
  std::optional<bool> left;
  bool not_tangent = false;  // the deed says that it does not go on from the course before
};

// R = arc / delta, chord = 2 R sin(delta / 2), tangent = R tan(delta / 2), middle ordinate
// R (1 - cos(delta / 2)), chord azimuth = azimuth in +- delta / 2: any book of route surveying, as J. Mahun,
// Open Access Surveying Library, Horizontal curves, chapter C.
struct Curve {
  double radius = 0;
  double delta = 0;  // 0 < delta < 2 pi
  double arc = 0;
  double chord = 0;
  double chord_azimuth = 0;
  double azimuth_in = 0, azimuth_out = 0;
  bool left = false;
  bool operator==(const Curve&) const = default;
};

// `before`: azimuth in which the course before ends; nothing for the first course. A chord and a radius alone
// mean the smaller of the two arcs there are. Given more than is needed, what is given must agree within
// kCurveSlack or one part in 2,000. Refuses, naming what is short or what does not agree: too little given,
// no direction, no side, a chord longer than the diameter or the arc, a full circle.
Result<Curve> curve_from(const CurveGiven& given, std::optional<double> before, UnitSystem units);

inline constexpr double kCurveSlack = 0.03;  // m: what rounding to hundredths of a foot and seconds can do

double chord_of(double radius, double delta);
double in_turn(double azimuth);  // 0 to below 2 pi

}  // namespace underlawn
