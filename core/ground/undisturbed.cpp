// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/undisturbed.h"

#include <cmath>
#include <numbers>

namespace underlawn {

using std::numbers::pi;

double damping_depth(double diffusivity) {
  return std::sqrt(365 * 86400 * diffusivity / pi);
}

double undisturbed_temperature(const GroundClimate& climate, double diffusivity, double z, double day) {
  const double deep = z / damping_depth(diffusivity);
  return climate.mean -
         climate.amplitude * std::exp(-deep) * std::cos(2 * pi * (day - climate.coldest_day) / 365 - deep);
}

}  // namespace underlawn
