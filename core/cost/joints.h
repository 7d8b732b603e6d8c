// SPDX-License-Identifier: GPL-3.0-or-later
// The joints that are fused, counted once for bill, calendar and figures.
#pragma once

#include "cost/pricing.h"
#include "cost/take_off.h"

namespace underlawn {

// One wherever a pipe or a fitting is joined to the next, both pipes, from the unions at the heat pump on:
//
//   ---o[ tee ]o---        at a place where p pipes meet by f fittings: p + f - 1
//         o                at an elbow on the way: 2
//     [reducer]            at a coupling in pipe longer than what is sold: 2
//         o                a pipe that goes on as it is: 0
//         |
//
// Where the loop could not be solved: joints_of of layout/amounts.h. 0 where nothing is laid.
int count_joints(const JobDrawn& job, const Pricing& pricing);

}  // namespace underlawn
