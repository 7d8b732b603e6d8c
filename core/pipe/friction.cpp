// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/friction.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace underlawn {
namespace {

double manlapaz_churchill(double reynolds, double ratio) {
  const double dean = reynolds * std::sqrt(ratio);
  // Published in steps: 2 below De 20, 1 to 40, 0 above. A straight line between keeps the head from jumping.
  const double m = std::clamp((40 - dean) / 10, 0.0, 2.0);
  const double low = 1 - 0.18 / std::sqrt(1 + std::pow(35 / dean, 2));
  return std::sqrt(std::pow(low, m) + std::pow(1 + ratio / 3, 2) * dean / 88.33);
}

}  // namespace

Regime regime_of(double reynolds) {
  if (reynolds <= 0) return Regime::still;
  if (reynolds < 2000) return Regime::laminar;
  return reynolds < 4000 ? Regime::transition : Regime::turbulent;
}

double friction_factor(double re, double roughness) {
  if (re < 1) return 64 / re;  // what the equation becomes; its twelfth powers would overflow
  const double a = std::pow(2.457 * std::log(1 / (std::pow(7 / re, 0.9) + 0.27 * roughness)), 16);
  const double b = std::pow(37530 / re, 16);
  return 8 * std::pow(std::pow(8 / re, 12) + std::pow(a + b, -1.5), 1.0 / 12);
}

double coil_friction_factor(double re, double bore, double coil_diameter) {
  if (!(coil_diameter > bore)) return friction_factor(re);
  const double ratio = bore / coil_diameter;
  const double laminar = 64 / re * std::max(1.0, manlapaz_churchill(re, ratio));
  const double turbulent = 0.304 * std::pow(re, -0.25) + 0.029 * std::sqrt(ratio);
  return re < 100 ? laminar : std::max(laminar, turbulent);
}

double gnielinski(double re, double pr, double f) {
  return f / 8 * (re - 1000) * pr / (1 + 12.7 * std::sqrt(f / 8) * (std::cbrt(pr * pr) - 1));
}

double nusselt(double re, double pr, double f) {
  constexpr double kLaminar = 3.66;
  if (re <= 2300) return kLaminar;
  if (re >= 4000) return gnielinski(re, pr, f);
  const double part = (re - 2300) / 1700;
  return (1 - part) * kLaminar + part * gnielinski(4000, pr, friction_factor(4000));
}

double fluid_resistance(double outside_diameter, double bore, double pipe_conductivity,
                        double film_coefficient) {
  using std::numbers::pi;
  return std::log(outside_diameter / bore) / (2 * pi * pipe_conductivity) +
         1 / (pi * bore * film_coefficient);
}

}  // namespace underlawn
