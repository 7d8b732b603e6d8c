// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_pressure.h"

#include <algorithm>

#include "base/quantity.h"
#include "base/say.h"
#include "base/typed_text.h"
#include "flow/network.h"

namespace underlawn {
namespace {

constexpr double kWater = 1000;  // kg/m3

std::string print(double pressure) {
  return say("{} ({})", print_quantity(Quantity::pressure, pressure, UnitSystem::metric),
             print_quantity(Quantity::pressure, pressure, UnitSystem::us));
}

Result<void> check_height(double height) {
  if (height >= -100 && height <= 300) return {};
  return refuse({"test_gauge_height", say("height of the gauge over the loop's lowest point"),
                 print_quantity(Quantity::length, height, UnitSystem::metric), say("-100 to 300 m"),
                 say("Enter the depth of the loop below the gauge.")});
}

}  // namespace

Result<std::vector<RatedPart>> rated_parts(const LoopVolume& loop, PeMaterial material, double temperature,
                                           const std::vector<RatedPart>& typed) {
  if (auto ok = check_loop(loop); !ok) return tl::unexpected(ok.error());
  std::vector<RatedPart> parts;
  for (const PipeShare& p : loop.pipes) {
    const auto rating = pressure_rating(material, p.dr, temperature);
    if (!rating) return tl::unexpected(rating.error());
    parts.push_back({p.name, *rating});
  }
  parts.insert(parts.end(), typed.begin(), typed.end());
  return parts;
}

Result<TestPressure> test_pressure(double working, const RatedPart& weakest, double height) {
  if (auto ok = check_height(height); !ok) return tl::unexpected(ok.error());
  if (!(working > 0 && working <= weakest.rating))
    return refuse(
        {"test_working_pressure", say("working pressure at the loop's lowest point"), print(working),
         say("more than 0 and at most {}, the rating of {}", print(weakest.rating), in_quotes(weakest.name)),
         say("Lower the working pressure, or choose a stronger part.")});
  TestPressure test;
  test.capped = kTestRatio * working > weakest.rating;
  test.at_lowest = std::min(kTestRatio * working, weakest.rating);
  test.at_gauge = test.at_lowest - kWater * kGravity * height;
  if (!(test.at_gauge > 0))
    return refuse({"test_gauge_height", say("height of the gauge over the loop's lowest point"),
                   print_quantity(Quantity::length, height, UnitSystem::metric),
                   say("less than the head of the test pressure of {}", print(test.at_lowest)),
                   say("Put the gauge nearer to the loop's depth, or test in parts.")});
  test.why = test.capped
                 ? say("All that {} bears at its temperature; 1.5 times the working pressure would be {}.",
                       in_quotes(weakest.name), print(kTestRatio * working))
                 : say("1.5 times the working pressure of {}.", print(working));
  return test;
}

Result<void> check_test_pressure(double at_gauge, const RatedPart& weakest, double height) {
  if (auto ok = check_height(height); !ok) return ok;
  const double most = weakest.rating - kWater * kGravity * height;
  if (at_gauge > 0 && at_gauge <= most) return {};
  return refuse(
      {"test_pressure_above_rating", say("test pressure at the gauge"), print(at_gauge),
       most > 0 ? say("more than 0 and at most {}, so that {} at the lowest point bears it", print(most),
                      in_quotes(weakest.name))
                : say("lower than the head of water alone allows"),
       say("Test at a lower pressure, take the weak part off and cap the pipe, or wait until the pipe "
           "is cooler.")});
}

}  // namespace underlawn
