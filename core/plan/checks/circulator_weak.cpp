// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> circulator_weak(const Plan& plan, const Outcome& outcome) {
  if (outcome.flow == nullptr || plan.flow.circulator.curve.empty()) return {};
  const auto& pump = outcome.flow->coldest_pump;
  const double flow = pump ? pump->duty.flow : 0;
  // A hundredth less is within what a pump curve tells.
  if (flow >= 0.99 * plan.flow.design_flow) return {};
  Finding f = make_finding("circulator_weak", "",
                           flow < 0.9 * plan.flow.design_flow ? Severity::error : Severity::warning,
                           say("The circulator gives too little flow at the coldest"));
  set_measure(f, flow, plan.flow.design_flow, Quantity::flow);
  f.advice =
      say("Choose a stronger circulator, wider pipe for header and run, or more circuits: the loop takes {} "
          "at the flow wanted.",
          print_quantity(Quantity::head, outcome.flow->coldest.flow.head_loss, plan.units));
  f.source = say("the circulator's curve against the loop's, Darcy-Weisbach with Churchill 1977");
  f.places = conduit_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
