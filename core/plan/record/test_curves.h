// SPDX-License-Identifier: GPL-3.0-or-later
// The planned test of a loop with its curves, and what the readings tell: for paper, all at once.
#pragma once

#include <optional>

#include "flow/loop_test.h"
#include "flow/test_verdict.h"

namespace underlawn {

struct TestCurves {
  PlannedTest test;
  TestBand band;
  TestCurve leak;                      // of the smallest leak that shows
  double smallest = 0;                 // m3/s
  std::optional<Judgement> judgement;  // where there are readings that can be judged
};

// Refusals of planned_test and test_band.
Result<TestCurves> test_curves(const LoopVolume& loop, const LoopTest& test, UnitSystem units);

}  // namespace underlawn
