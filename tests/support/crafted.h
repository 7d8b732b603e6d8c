// SPDX-License-Identifier: GPL-3.0-or-later
// Outcomes put together by hand, so that a check is tried on exactly the layout it is meant to judge.
#pragma once

#include "plan/checks/check.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn::crafted {

// A lot 100 m square with 3 m setbacks, a house 20 m by 10 m in the south with its entry point in the north
// wall at (50, 20); loops of 0.9 m in trenches 1 m wide, 1.4 m deep, 4 m apart; run and header 0.6 m
// wide, 1.2 m deep; no frost, rock; a very small house load. Nothing in it makes a check speak.
Plan plan();

Feature feature(int id, FeatureKind kind, std::vector<Point> points);

Trench trench(int number, Point head, Point end);

// With the trenches given, a header along their heads (where there are two or more) and a straight run from
// the entry point to the first head, everything else as solve() would make it from them, but no checks.
Outcome outcome(const Plan& plan, std::vector<Trench> trenches);

// Two trenches 4 m apart from (30, 40) and (30, 44) to x = 60.
Outcome two_trenches(const Plan& plan);

std::vector<std::string> keys(const std::vector<Finding>& findings);

}  // namespace underlawn::crafted
