// SPDX-License-Identifier: GPL-3.0-or-later
// The loop as a vessel: how much it holds and how soft it is.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"

namespace underlawn {

struct PipeShare {
  std::string name;
  double bore = 0;              // m, inside diameter for flow
  double outside_diameter = 0;  // m, > bore
  double dr = 11;               // 4..41
  double length = 0;            // m, > 0
};

struct LoopVolume {
  std::vector<PipeShare> pipes;
};

// Refuses a loop without pipes and pipes of no bore, wall, length or ratio.
Result<void> check_loop(const LoopVolume& loop);

double loop_volume(const LoopVolume& loop);  // m3
// bore_compliance, each pipe weighted by what it holds.
double loop_compliance(const LoopVolume& loop, double poisson);

}  // namespace underlawn
