// SPDX-License-Identifier: GPL-3.0-or-later
// The pressure test of a plan's loop: what is asked, what was read, and the test that follows.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.h"
#include "flow/pressure_test.h"
#include "flow/test_pressure.h"
#include "flow/test_readings.h"

namespace underlawn {

// The programmes of test_procedure.h.
enum class TestProcedure { pump_then_shut_in, hold_then_shut_in, long_hold_then_shut_in, rebound };
std::string test_procedure_name(TestProcedure procedure);
double test_duration(TestProcedure procedure);  // s, from the start of pumping to the last reading

struct LoopTest {
  TestProcedure procedure = TestProcedure::long_hold_then_shut_in;
  double working_pressure = 413'685.4;  // Pa gauge at the lowest point, > 0: 60 psi, of which the crew's 90
                                        // psi are 1.5 times (common practice, no source)
  double gauge_height = 2;              // m of the gauge over the loop's lowest point, -100..300
  double temperature = 15;              // deg C of the pipe, -28..60
  double weakest_fitting = 0;    // Pa gauge that the weakest fitting bears; 0: none weaker than the pipe
  std::string fitting_name;      // of that fitting
  std::optional<double> pumped;  // m3 pumped in from full to the test pressure, 0..100, where it was measured
  std::vector<PressureReading> readings;  // none yet, or what check_readings takes
  bool operator==(const LoopTest&) const = default;
};

// Everything out of bounds and what check_readings refuses. Empty when all is well.
std::vector<Trouble> loop_test_troubles(const LoopTest& test, UnitSystem units = UnitSystem::metric);

struct PlannedTest {
  TestPressure pressure;
  RatedPart weakest;
  TestProgramme programme;
  LoopState state;  // the sound loop, full of water, held by soil or ties
};
// Pipe of PE4710. Refusals of rated_parts and test_pressure.
Result<PlannedTest> planned_test(const LoopTest& test, const LoopVolume& loop);

}  // namespace underlawn
