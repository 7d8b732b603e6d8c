// SPDX-License-Identifier: GPL-3.0-or-later
// Cuts that run into one another: earth that lies in two of them is dug once.
//
//   \        /\        /     two trenches laid back so far that their sides meet; the header across the head
//    \      /xx\      /      of a coil trench
//     \____/    \____/
#pragma once

#include <vector>

#include "plane/point.h"

namespace underlawn {

// Earth between two depths below the ground, of a trench or of the sand in it. Ends vertical, corners as
// strip_along has them.
struct Cut {
  Polyline line;     // middle line
  double width = 0;  // m across, at `floor`
  double slope = 0;  // horizontal per vertical, of both sides
  double top = 0;    // m below the ground, < floor
  double floor = 0;  // m below the ground
};

// m3 of each cut that count with another: what two cuts hold together is halved between them, and nothing is
// counted for more than two, so that what is left of all is the volume of their union. Integrated over the
// depth from areas of the plan, each depth exact to the clipper's grid (plane/region.h), the whole to about
// 0.01 m3 a cut. Where floors are level and the ground is not, cuts meet as if each were as deep all along as
// it is in the mean.
std::vector<double> counted_twice(const std::vector<Cut>& cuts);

}  // namespace underlawn
