// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/loop_test.h"

#include <cmath>

#include "base/say.h"
#include "flow/test_procedure.h"

namespace underlawn {
namespace {

struct Bound {
  const char* code;
  std::string thing;
  Quantity quantity;
  double value, low, high;
  std::string advice;
};

TestProgramme programme_of(TestProcedure procedure, double pressure) {
  switch (procedure) {
    case TestProcedure::pump_then_shut_in:
      return pump_then_shut_in(pressure);
    case TestProcedure::hold_then_shut_in:
      return hold_then_shut_in(pressure);
    case TestProcedure::rebound:
      return rebound_test(pressure);
    case TestProcedure::long_hold_then_shut_in:
      break;
  }
  return long_hold_then_shut_in(pressure);
}

}  // namespace

std::string test_procedure_name(TestProcedure procedure) {
  switch (procedure) {
    case TestProcedure::pump_then_shut_in:
      return say("pump up and shut in");
    case TestProcedure::hold_then_shut_in:
      return say("hold 30 min, shut in 30 min");
    case TestProcedure::long_hold_then_shut_in:
      return say("hold 4 h, shut in 1 h");
    case TestProcedure::rebound:
      return say("rebound after 4 h, ASTM F2164");
  }
  return say("unknown");
}

double test_duration(TestProcedure procedure) {
  double duration = 0;
  for (const TestPhase& phase : programme_of(procedure, 0).phases) duration += phase.duration;
  return duration;
}

std::vector<Trouble> loop_test_troubles(const LoopTest& test, UnitSystem units) {
  const Bound bounds[] = {
      {"test_working_pressure", say("Working pressure"), Quantity::pressure, test.working_pressure, 1000, 5e6,
       say("Enter the pressure at the lowest point while the heat pump runs.")},
      {"test_gauge_height", say("Height of the gauge over the loop"), Quantity::length, test.gauge_height,
       -100, 300, say("Enter the depth of the loop below the gauge.")},
      {"test_temperature", say("Temperature of the pipe under test"), Quantity::temperature, test.temperature,
       -28, 60, say("Enter the temperature of the ground or the water in the pipe.")},
      {"test_weakest_fitting", say("Pressure that the weakest fitting bears"), Quantity::pressure,
       test.weakest_fitting, 0, 1e7, say("Read it off the fitting; 0 where none is weaker than the pipe.")},
      {"test_pumped", say("Water pumped in"), Quantity::fluid_volume, test.pumped.value_or(0), 0, 100,
       say("Enter what went in from full to the test pressure, or 0 where it was not measured.")}};
  std::vector<Trouble> troubles;
  const auto print = [&](const Bound& b, double value) {
    return std::isfinite(value) ? print_quantity(b.quantity, value, units, Fineness::fine)
                                : say("not a number");
  };
  for (const Bound& b : bounds)
    if (!(b.value >= b.low && b.value <= b.high))
      troubles.push_back({std::string(b.code) + "_out_of_bounds", b.thing, print(b, b.value),
                          say("from {} to {}", print(b, b.low), print(b, b.high)), b.advice});
  if (!test.readings.empty())
    if (const auto ok = check_readings(test.readings); !ok) troubles.push_back(ok.error());
  return troubles;
}

Result<PlannedTest> planned_test(const LoopTest& test, const LoopVolume& loop) {
  std::vector<RatedPart> typed;
  if (test.weakest_fitting > 0)
    typed.push_back(
        {test.fitting_name.empty() ? say("weakest fitting") : test.fitting_name, test.weakest_fitting});
  const auto parts = rated_parts(loop, PeMaterial::pe4710, test.temperature, typed);
  if (!parts) return refuse(parts.error());
  const auto weakest = weakest_part(*parts);
  if (!weakest) return refuse(weakest.error());
  const auto pressure = test_pressure(test.working_pressure, *weakest, test.gauge_height);
  if (!pressure) return refuse(pressure.error());
  PlannedTest planned{*pressure, *weakest, programme_of(test.procedure, pressure->at_gauge), {}};
  planned.state.temperature = {{0, test.temperature}};
  return planned;
}

}  // namespace underlawn
