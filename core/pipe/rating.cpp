// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/rating.h"

#include <array>

#include "base/quantity.h"
#include "base/say.h"
#include "base/typed_text.h"

namespace underlawn {
namespace {

constexpr double kPsi = 6894.757293168;  // Pa

struct Point {
  double fahrenheit, factor;
};
constexpr std::array<Point, 7> kFactors = {
    {{73.4, 1.00}, {80, 0.92}, {90, 0.83}, {100, 0.75}, {110, 0.69}, {120, 0.63}, {140, 0.50}}};

}  // namespace

double design_stress(PeMaterial material) {
  return (material == PeMaterial::pe4710 ? 1000 : 800) * kPsi;
}

Result<double> temperature_factor(double temperature) {
  const double f = temperature * 1.8 + 32;
  if (!(temperature >= -40 && f <= kFactors.back().fahrenheit + 1e-9))
    return refuse({"rating_temperature", say("temperature of the pipe under pressure"),
                   print_quantity(Quantity::temperature, temperature, UnitSystem::metric), say("-40 to 60 C"),
                   say("Let the pipe cool, or use a pipe rated for it.")});
  for (std::size_t i = 1; i < kFactors.size(); ++i) {
    const Point &a = kFactors[i - 1], &b = kFactors[i];
    if (f <= a.fahrenheit) return a.factor;
    if (f <= b.fahrenheit)
      return a.factor + (b.factor - a.factor) * (f - a.fahrenheit) / (b.fahrenheit - a.fahrenheit);
  }
  return kFactors.back().factor;
}

Result<double> pressure_rating(PeMaterial material, double dr, double temperature) {
  if (!(dr >= 4 && dr <= 41))
    return refuse({"rating_dr", say("dimension ratio of the pipe"),
                   print_quantity(Quantity::count, dr, UnitSystem::metric), say("4 to 41"),
                   say("Enter the DR printed on the pipe.")});
  return temperature_factor(temperature).map([&](double factor) {
    return 2 * design_stress(material) * factor / (dr - 1);
  });
}

Result<RatedPart> weakest_part(const std::vector<RatedPart>& parts) {
  if (parts.empty())
    return refuse({"rating_no_parts", say("number of parts under pressure"), "0", say("at least 1"),
                   say("Choose the pipes of the loop first.")});
  const RatedPart* weakest = &parts.front();
  for (const RatedPart& part : parts) {
    if (!(part.rating > 0 && part.rating < 1e9))
      return refuse({"rating_of_part", say("pressure rating of {}", in_quotes(part.name)),
                     print_quantity(Quantity::pressure, part.rating, UnitSystem::metric), say("more than 0"),
                     say("Enter the rating printed on the part.")});
    if (part.rating < weakest->rating) weakest = &part;
  }
  return *weakest;
}

}  // namespace underlawn
