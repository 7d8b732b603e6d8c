// SPDX-License-Identifier: GPL-3.0-or-later
// The ground's own temperature by depth and day.
#pragma once

namespace underlawn {

// Kusuda & Achenbach 1965, ASHRAE Transactions 71(1):61-74:
//   T(z, t) = mean - amplitude exp(-z/d) cos(2 pi (t - coldest_day)/365 - z/d),  d = sqrt(365 a/pi), a in
//   m2/day
struct GroundClimate {
  double mean = 10;         // deg C, of the year at the surface, and so at every depth
  double amplitude = 11;    // K, half of the yearly swing at the surface
  double coldest_day = 35;  // day of the year on which the surface is coldest
  bool operator==(const GroundClimate&) const = default;
};

double damping_depth(double diffusivity);  // m, for the yearly wave; diffusivity in m2/s
// deg C at depth z (m, >= 0) and day of the year t (any real).
double undisturbed_temperature(const GroundClimate& climate, double diffusivity, double z, double day);

}  // namespace underlawn
