// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> water_too_warm(const Plan& plan, const Outcome& outcome) {
  const Simulation* s = simulated(outcome);
  if (s == nullptr || s->warmest < -1e8 || s->warmest <= plan.thermal.warmest_allowed + kSameTemperature)
    return {};
  return {limit_broken("water_too_warm", say("The water gets too warm: {}", when_warmest(*s)), s->warmest,
                       plan.thermal.warmest_allowed, outcome)};
}

}  // namespace underlawn::checks
