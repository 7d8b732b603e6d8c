// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/friction.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace underlawn {
namespace {

double fourth(double x) {
  return x * x * x * x;
}

// f of the coil over f of straight pipe, laminar, and its slope.
Friction manlapaz_churchill(double reynolds, double ratio) {
  const double dean = reynolds * std::sqrt(ratio);
  const double reach = (1 + ratio / 3) * (1 + ratio / 3) * dean / 88.33;
  if (dean > 40) return {std::sqrt(1 + reach), 0.5 * reach / (1 + reach)};
  // Published in steps: 2 below De 20, 1 to 40, 0 above. A straight line between keeps the head from jumping.
  const double m = std::clamp((40 - dean) / 10, 0.0, 2.0);
  const double far = (35 / dean) * (35 / dean), root = std::sqrt(1 + far);
  const double low = 1 - 0.18 / root, part = std::pow(low, m);
  const double m_slope = m > 0 && m < 2 ? -dean / 10 : 0;  // dm/d ln De
  const double low_slope = -0.18 * far / (root * root * root * low);
  const double part_slope = m_slope * std::log(low) + m * low_slope;
  return {std::sqrt(part + reach), 0.5 * (part * part_slope + reach) / (part + reach)};
}

}  // namespace

Regime regime_of(double reynolds) {
  if (reynolds <= 0) return Regime::still;
  if (reynolds < 2000) return Regime::laminar;
  return reynolds < 4000 ? Regime::transition : Regime::turbulent;
}

Friction friction_at(double re, double roughness) {
  if (re < 1) return {64 / re, -1};  // what the equation becomes; its twelfth powers would overflow
  const double over = 1 / re, smooth = std::exp(0.9 * std::log(7 * over));
  const double w = smooth + 0.27 * roughness, y = -std::log(w);
  const double a = fourth(fourth(2.457 * y)), b = fourth(fourth(37530 * over)), eight = fourth(8 * over);
  const double laminar = eight * eight * eight, turbulent = 1 / ((a + b) * std::sqrt(a + b));
  const double bent = (y != 0 ? 16 * a * 0.9 * smooth / (w * y) : 0) - 16 * b;  // d(a + b)/d ln Re
  const double sum = laminar + turbulent;
  return {8 * std::cbrt(std::sqrt(std::sqrt(sum))),
          -(laminar * (a + b) + 0.125 * turbulent * bent) / ((a + b) * sum)};
}

double friction_factor(double re, double roughness) {
  return friction_at(re, roughness).factor;
}

Friction coil_friction_at(double re, double bore, double coil_diameter) {
  if (!(coil_diameter > bore)) return friction_at(re);
  const double ratio = bore / coil_diameter;
  Friction laminar{64 / re, -1};
  const Friction more = manlapaz_churchill(re, ratio);
  if (more.factor > 1) laminar = {laminar.factor * more.factor, more.slope - 1};
  const double blasius = 0.304 / std::sqrt(std::sqrt(re));
  const Friction turbulent{blasius + 0.029 * std::sqrt(ratio), 0};
  if (re < 100 || laminar.factor >= turbulent.factor) return laminar;
  return {turbulent.factor, -0.25 * blasius / turbulent.factor};
}

double coil_friction_factor(double re, double bore, double coil_diameter) {
  return coil_friction_at(re, bore, coil_diameter).factor;
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
