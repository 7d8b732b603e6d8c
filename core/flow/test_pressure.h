// SPDX-License-Identifier: GPL-3.0-or-later
// How high to test.
#pragma once

#include <string>
#include <vector>

#include "flow/loop_volume.h"
#include "pipe/rating.h"

namespace underlawn {

inline constexpr double kTestRatio = 1.5;  // of the working pressure: 49 CFR 192.513(c), of plastic pipelines

// Every pipe of the loop with its rating at `temperature`, then the parts typed in.
Result<std::vector<RatedPart>> rated_parts(const LoopVolume& loop, PeMaterial material, double temperature,
                                           const std::vector<RatedPart>& typed);

struct TestPressure {
  double at_lowest = 0;  // Pa gauge at the lowest point of the loop
  double at_gauge = 0;   // Pa the crew reads
  bool capped = false;   // less than 1.5 x working pressure, because a part bears no more
  std::string why;
};
// 1.5 x `working` (Pa gauge at the lowest point, > 0), at most the rating of the weakest part; the gauge,
// which stands `gauge_above_lowest` m (-100..300) over the lowest point, reads less by the water between.
// Refused: working pressure above the rating, a gauge so high that it would read nothing.
Result<TestPressure> test_pressure(double working, const RatedPart& weakest, double gauge_above_lowest);

// Is a typed gauge pressure one the weakest part bears at the lowest point? The way out is in the refusal.
Result<void> check_test_pressure(double at_gauge, const RatedPart& weakest, double gauge_above_lowest);

}  // namespace underlawn
