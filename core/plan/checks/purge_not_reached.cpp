// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> purge_not_reached(const Plan& plan, const Outcome& outcome) {
  if (outcome.purge == nullptr || plan.flow.flush_cart.curve.empty()) return {};
  const Purge& p = *outcome.purge;
  if (p.together.cart_can || (p.one_by_one && p.one_by_one->cart_can)) return {};
  Finding f =
      make_finding("purge_not_reached", "", Severity::warning, say("The flush cart cannot purge the loop"));
  set_measure(f, p.together.cart ? p.together.cart->flow : 0, p.together.flow, Quantity::flow);
  f.advice =
      say("Bring a cart that gives {} at {}, let the header step down, or put valves so that circuits are "
          "flushed one by one.",
          print_quantity(Quantity::flow, p.together.flow, plan.units),
          print_quantity(Quantity::head, p.together.head, plan.units));
  f.source = say("2 ft/s in every pipe: UFGS 15741N; ENERGY STAR Homes Northwest");
  f.places = conduit_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
