// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers of a plan and what each may be; those that are not become troubles.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "plan/plan.h"

namespace underlawn {

// One number of the plan and what it may be. SI; `low` may be minus infinity: any finite number.
struct BoundedNumber {
  std::string thing;  // as marked: the code is made of its English
  Quantity quantity;
  double value;
  double low, high;
  bool above_low;  // must be more than `low`, not only as much
  std::string advice;
  std::string kind = {};  // stands for `thing` in the code, where that carries a name the designer gave
};

// A trouble for each that is not finite or out of its bounds, in the plan's own units.
void check_numbers(std::vector<Trouble>& troubles, const Plan& plan,
                   const std::vector<BoundedNumber>& numbers);

// A trouble when one of `points`, which belong to what is called `name`, is not finite or beyond
// kLargestPlan.
void check_places(std::vector<Trouble>& troubles, const Plan& plan, const std::vector<Point>& points,
                  const std::string& name);

}  // namespace underlawn
