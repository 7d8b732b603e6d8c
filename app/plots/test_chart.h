// SPDX-License-Identifier: GPL-3.0-or-later
// The pressure test as a chart: what the gauge shows once the valve is shut.
#pragma once

#include "flow/loop_test.h"
#include "flow/test_band.h"
#include "plots/chart.h"

namespace underlawn {

struct TestPicture {
  TestProgramme programme;
  TestProcedure procedure = TestProcedure::long_hold_then_shut_in;
  TestBand band;                          // of a sound loop
  TestCurve leak;                         // with a leak of leak_size
  double leak_size = 0;                   // m3/s
  std::vector<PressureReading> readings;  // none yet
};

// Pressure against time since the valve was shut: the sound loop and where it may lie, that leak, the
// readings over them, the pressure shut in at, and for the rebound test the 5 % either way that ASTM F2164
// allows.
Chart test_chart(const TestPicture& picture, UnitSystem units);
// In its place where there are no curves.
Chart no_test_chart();

}  // namespace underlawn
