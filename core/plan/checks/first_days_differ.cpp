// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "dig/dates.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/dated_crew.h"

namespace underlawn::checks {

std::vector<Finding> first_days_differ(const Plan& plan, const Outcome&) {
  Plan family = plan;
  family.crew.start.clear();
  const std::string promised = dated_crew(family).start;
  if (promised.empty() || !day_number(plan.crew.start) || promised == plan.crew.start) return {};
  Finding f = make_finding("first_days_differ", "crew", Severity::warning, "");
  f.title = say("The crew begins on {}, the proposal says {}", plan.crew.start, promised);
  f.advice = say("Name one day in both, or leave the crew's empty: it then begins on the proposal's.");
  return {f};
}

}  // namespace underlawn::checks
