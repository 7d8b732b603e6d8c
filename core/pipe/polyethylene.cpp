// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/polyethylene.h"

#include <array>
#include <cmath>

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

struct Point {
  double fahrenheit, multiplier;
};
constexpr std::array<Point, 17> kMultipliers = {{{-20, 2.54},
                                                 {-10, 2.36},
                                                 {0, 2.18},
                                                 {10, 2.00},
                                                 {20, 1.81},
                                                 {30, 1.65},
                                                 {40, 1.49},
                                                 {50, 1.32},
                                                 {60, 1.18},
                                                 {73.4, 1.00},
                                                 {80, 0.93},
                                                 {90, 0.82},
                                                 {100, 0.73},
                                                 {110, 0.64},
                                                 {120, 0.58},
                                                 {130, 0.50},
                                                 {140, 0.43}}};

std::string degrees(double t) {
  return print_quantity(Quantity::temperature, t, UnitSystem::metric);
}

}  // namespace

Result<void> check_creep(const PeCreep& c) {
  const auto trouble = [](const std::string& thing, double value, const std::string& bound,
                          const std::string& advice) {
    return refuse({"pe_creep", thing, std::to_string(value), bound, advice});
  };
  if (!(c.modulus_one_hour >= 1e6 && c.modulus_one_hour <= 1e11))
    return trouble(say("modulus of the pipe at one hour, Pa"), c.modulus_one_hour,
                   say("{} to {}", "1e6", "1e11"), say("Polyethylene has about 534e6."));
  if (!(c.exponent > 0 && c.exponent < 0.5))
    return trouble(say("creep exponent of the pipe"), c.exponent, say("more than 0 and less than 0.5"),
                   say("Polyethylene has about 0.075."));
  if (!(c.poisson >= 0 && c.poisson < 0.5))
    return trouble(say("Poisson's ratio of the pipe"), c.poisson, say("0 or more and less than 0.5"),
                   say("Polyethylene has 0.45."));
  return {};
}

double creep_modulus(const PeCreep& creep, double seconds) {
  return creep.modulus_one_hour * std::pow(seconds / 3600, -creep.exponent);
}

Result<double> modulus_multiplier(double temperature) {
  const double f = temperature * 1.8 + 32, slack = 1e-9;
  for (std::size_t i = 0; i + 1 < kMultipliers.size(); ++i) {
    const Point &a = kMultipliers[i], &b = kMultipliers[i + 1];
    if (f < a.fahrenheit - slack || f > b.fahrenheit + slack) continue;
    return a.multiplier + (b.multiplier - a.multiplier) * (f - a.fahrenheit) / (b.fahrenheit - a.fahrenheit);
  }
  return refuse({"pe_temperature", say("temperature of the pipe"), degrees(temperature), say("-28.9 to 60 C"),
                 say("Enter the temperature of the pipe itself.")});
}

double bore_compliance(double dr, double poisson) {
  const double k = dr / (dr - 2), k2 = k * k;
  return 2 * (1 + poisson) * ((1 - 2 * poisson) + k2) / (k2 - 1);
}

double bore_expansion(PipeHold hold, double poisson) {
  return (hold == PipeHold::free ? 3 : 2 * (1 + poisson)) * kPeExpansion;
}

}  // namespace underlawn
