// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> water_too_cold(const Plan& plan, const Outcome& outcome) {
  const Simulation* s = simulated(outcome);
  if (s == nullptr || s->coldest > 1e8 || s->coldest >= plan.thermal.coldest_allowed - kSameTemperature)
    return {};
  return {limit_broken("water_too_cold", say("The water gets too cold: {}", when_coldest(*s)), s->coldest,
                       plan.thermal.coldest_allowed, outcome)};
}

}  // namespace underlawn::checks
