// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> freeze_protection(const Plan& plan, const Outcome& outcome) {
  if (outcome.flow == nullptr) return {};
  const Antifreeze& a = outcome.flow->antifreeze;
  if (a.freezing_point <= a.wanted_freezing + kSameTemperature) return {};
  Finding f =
      make_finding("freeze_protection", "", Severity::error, say("The fluid can freeze in the heat pump"));
  set_measure(f, a.freezing_point, a.wanted_freezing, Quantity::temperature);
  f.advice =
      a.recommended && plan.flow.fluid != Fluid::water
          ? say("Use at least {} of {} by mass.", print_quantity(Quantity::ratio, *a.recommended, plan.units),
                std::string(fluid_name(plan.flow.fluid)))
          : say("Choose another antifreeze, or keep the loop warmer.");
  f.source = say("coldest fluid less the margin; freezing point by Melinder 2010");
  f.places = conduit_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
