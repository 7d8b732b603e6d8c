// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

// The coldest fluid that was typed, or that comes back from the heat pump in the years solved.
double coldest_fluid(const Plan& plan, const Outcome& outcome) {
  double coldest = plan.flow.coldest_temperature;
  if (const Simulation* s = simulated(outcome))
    for (const auto* year : {&s->first, &s->tenth, &s->last})
      for (const HourState& h : *year) coldest = std::min(coldest, h.leaving);
  return coldest;
}

}  // namespace

std::vector<Finding> freeze_protection(const Plan& plan, const Outcome& outcome) {
  if (outcome.flow == nullptr) return {};
  const double coldest = coldest_fluid(plan, outcome);
  const double required = std::min(0.0, coldest - plan.flow.freeze_margin);
  const double freezes = outcome.flow->antifreeze.freezing_point;
  if (freezes <= required + kSameTemperature) return {};
  Finding f =
      make_finding("freeze_protection", "", Severity::error, say("The fluid can freeze in the heat pump"));
  set_measure(f, freezes, required, Quantity::temperature);
  const auto needed = concentration_for(plan.flow.fluid, required);
  f.advice = needed && plan.flow.fluid != Fluid::water
                 ? say("Use at least {} of {} by mass.", print_quantity(Quantity::ratio, *needed, plan.units),
                       std::string(fluid_name(plan.flow.fluid)))
                 : say("Choose another antifreeze, or keep the loop warmer.");
  f.source = say("coldest fluid less the margin; freezing point by Melinder 2010");
  f.places = conduit_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
