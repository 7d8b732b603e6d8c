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

double twelfth(double x) {
  return fourth(x * x * x);
}

// Churchill's equation is f = 8/u^2 (l + (1 + b)^-1.5)^(1/12) with u = A^(1/16), b = B/A and
// l = (8/Re u^2)^12; where l and b are below 1e-4 a few terms of the series give all digits. y = u/2.457,
// `part` is the smooth pipe's share of what the logarithm is taken of.
Friction turbulent_friction(double re, double y, double part) {
  const double over = 1 / re, over_y = 1 / y;
  const double u = 2.457 * y, g = 0.9 * part * over_y;  // d ln y/d ln Re
  const double l = twelfth(8 * over * u * u), b = fourth(fourth(37530 / 2.457 * over * over_y));
  const double t = l - 1.5 * b * (1 - 1.25 * b), l_slope = 2 * g - 1, b_slope = -1 - g;
  const double more = 1 - part + part * over_y;
  return {8 / (2.457 * 2.457) * over_y * over_y * (1 + t / 12 * (1 - 11.0 / 24 * t)),
          -2 * g + (l * l_slope - 2 * b * b_slope * (1 - 2.5 * b)) * (1 - t),
          1.8 * g * more + 12 * l * l_slope * l_slope - 32 * b * b_slope * b_slope,
          1.62 * g * (part * (1 - part) - more * (more + part * over_y)) +
              144 * l * l_slope * l_slope * l_slope - 512 * b * b_slope * b_slope * b_slope,
          true};
}

// Manlapaz & Churchill's f of the coil, laminar.
Friction coiled_laminar(double re, double ratio) {
  const double dean = re * std::sqrt(ratio);
  const double reach = (1 + ratio / 3) * (1 + ratio / 3) * dean / 88.33;
  if (dean > 40) {
    const double part = reach / (1 + reach);
    const double bend = 0.5 * part * (1 - part);
    return {64 / re * std::sqrt(1 + reach), 0.5 * part - 1, bend, bend * (1 - 2 * part), true};
  }
  // Published in steps: 2 below De 20, 1 to 40, 0 above. A straight line between keeps the head from jumping.
  const double m = std::clamp((40 - dean) / 10, 0.0, 2.0);
  const double far = (35 / dean) * (35 / dean), root = std::sqrt(1 + far);
  const double low = 1 - 0.18 / root, part = std::pow(low, m);
  const double m_slope = m > 0 && m < 2 ? -dean / 10 : 0;  // dm/d ln De
  const double low_slope = -0.18 * far / (root * root * root * low);
  const double part_slope = m_slope * std::log(low) + m * low_slope;
  const double more = std::sqrt(part + reach);  // f of the coil over f of straight pipe
  if (more <= 1) return {64 / re, -1};
  return {64 / re * more, 0.5 * (part * part_slope + reach) / (part + reach) - 1};
}

}  // namespace

Regime regime_of(double reynolds) {
  if (reynolds <= 0) return Regime::still;
  if (reynolds < 2000) return Regime::laminar;
  return reynolds < 4000 ? Regime::transition : Regime::turbulent;
}

Friction friction_at(double re, double roughness) {
  // Below 800 all but the laminar term is less than the last digit.
  if (re < 800) return {64 / re, -1, 0, 0, true};
  const double smooth = std::exp(0.9 * std::log(7 / re)), w = smooth + 0.27 * roughness, y = -std::log(w);
  if (re > 5000 && re * y > 27300) return turbulent_friction(re, y, smooth / w);
  const double over = 1 / re;
  const double a = fourth(fourth(2.457 * y)), b = fourth(fourth(37530 * over));
  const double laminar = twelfth(8 * over), turbulent = 1 / ((a + b) * std::sqrt(a + b));
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
  Friction laminar = coiled_laminar(re, ratio);
  const double blasius = 0.304 / std::sqrt(std::sqrt(re)), turbulent = blasius + 0.029 * std::sqrt(ratio);
  const double share = blasius / turbulent;
  const bool apart = std::abs(laminar.factor - turbulent) > 0.01 * turbulent;
  laminar.gentle = laminar.gentle && (apart || re < 100);
  if (re < 100 || laminar.factor >= turbulent) return laminar;
  const double bend = 0.0625 * share * (1 - share);
  return {turbulent, -0.25 * share, bend, -0.25 * bend * (1 - 2 * share), apart};
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
