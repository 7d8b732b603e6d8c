// SPDX-License-Identifier: GPL-3.0-or-later
// Trees over whose roots is driven: wheels and tracks press the soil that roots breathe through.
#pragma once

#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

struct RootsDriven {
  int tree = 0;          // id of the feature
  bool machine = false;  // its ways from step to step and out again, and what it digs along
  bool trucks = false;
  double area = 0;     // m2 of the root zone under tracks and wheels, each place once
  double nearest = 0;  // m from the trunk's middle to the edge of what is driven on
};

// In the order of the features; specks are not spoken of. Nothing without an order of digging.
std::vector<RootsDriven> roots_driven(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
