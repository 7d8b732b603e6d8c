// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/coil_hold.h"

#include <algorithm>

#include "base/say.h"
#include "flow/test_band.h"
#include "flow/test_procedure.h"

namespace underlawn {
namespace {

// As planned_test takes the water's head off the test pressure.
Result<double> kept_at_gauge(const LoopTest& test, const PlannedTest& planned) {
  const double head = planned.pressure.at_lowest - planned.pressure.at_gauge;
  if (test.working_pressure > head) return test.working_pressure - head;
  return refuse({"test_gauge_height", say("height of the gauge over the loop's lowest point"),
                 print_quantity(Quantity::length, test.gauge_height, UnitSystem::metric),
                 say("less than the head of the working pressure of {}",
                     print_quantity(Quantity::pressure, test.working_pressure, UnitSystem::metric)),
                 say("Put the gauge nearer to the loop's depth, or test in parts.")});
}

TestProgramme programme_of(double proved, double kept, double covered) {
  TestProgramme p = hold_then_shut_in(proved, kCoilProved, covered);
  p.phases.insert(p.phases.end() - 1, {PhaseKind::pump, kPumpUp, kept});
  return p;
}

}  // namespace

Result<CoilHold> coil_hold(const LoopTest& test, const LoopVolume& coil, double covered) {
  const auto planned = planned_test(test, coil);
  if (!planned) return refuse(planned.error());
  const auto kept = kept_at_gauge(test, *planned);
  if (!kept) return refuse(kept.error());
  CoilHold hold{planned->pressure.at_gauge, *kept, 0, std::clamp(covered, 60.0, 86400.0)};
  const TestProgramme programme = programme_of(hold.proved, hold.kept, hold.covered);
  const TestBounds bounds;
  const auto prepared = prepare_band(programme, planned->state, bounds);
  if (!prepared) return refuse(prepared.error());
  const auto band = test_band(*prepared, coil, planned->state, bounds);
  if (!band) return refuse(band.error());
  hold.least = band->low_at(programme_end(programme));
  return hold;
}

}  // namespace underlawn
