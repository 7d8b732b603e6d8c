// SPDX-License-Identifier: GPL-3.0-or-later
// Several things of the lot at once: taken out as a plan of their own, added again, turned.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace underlawn::edit {

struct Things {
  std::vector<int> features;    // ids
  std::vector<int> locked;      // places in Wishes::locked
  std::vector<int> dimensions;  // places in Plan::dimensions
  bool lot = false;
  std::vector<int> heights = {};  // places in Site::heights
};

// A plan of nothing but these, in the units of the other; the lot line is not taken along. What is not there
// is left out.
Plan taken_out(const Plan& plan, const Things& things);

// Features, drawn trenches, dimensions and spot heights of `other`, moved, added behind those there are;
// features with new ids above. What would lie beyond kLargestPlan is left out, and a spot height where there
// is one already.
Plan with_added(Plan plan, const Plan& other, Point by);
// What is in `after` and was not in `before`, where things were only added.
Things added(const Plan& before, const Plan& after);

// Counter-clockwise. The entry point turns with its house.
Plan turned(Plan plan, const Things& things, double radians, Point about);

}  // namespace underlawn::edit
