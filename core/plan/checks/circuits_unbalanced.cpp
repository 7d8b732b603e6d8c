// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "flow/flow_remarks.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> circuits_unbalanced(const Plan& plan, const Outcome& outcome) {
  if (outcome.flow == nullptr || outcome.flow->design.imbalance <= plan.flow.most_imbalance) return {};
  const Flow& flow = *outcome.flow;
  Finding f =
      make_finding("circuits_unbalanced", "", Severity::warning, say("The circuits are out of balance"));
  set_measure(f, flow.design.imbalance, plan.flow.most_imbalance, Quantity::ratio);
  f.advice = balance_advice(flow.remedies, plan.units);
  f.source = say("limit entered by the designer; 10 % is common practice, no source");
  f.places = conduit_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
