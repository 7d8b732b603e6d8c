// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/plan_troubles.h"

namespace underlawn::checks {

// Loops are named by their centre line, and 3 ft loops in a 3 ft trench are usual, so the pipe's own
// half-thickness on each side is not held against them.
std::vector<Finding> coil_wider_than_trench(const Plan& plan, const Outcome& outcome) {
  const double loop = outcome.coil.loop_diameter;
  if (outcome.coil.loops <= 0 || !wishes_troubles(plan).empty()) return {};
  if (!falls_short(plan.wishes.trench_width, loop)) return {};
  Finding f =
      make_finding("coil_wider_than_trench", "coil", Severity::error, "The loops are wider than the trench");
  set_measure(f, plan.wishes.trench_width, loop);
  f.advice =
      "Dig at least " + print_quantity(Quantity::length, loop, plan.units) + " wide, or use smaller loops.";
  f.source = "the coil lies flat on the trench floor";
  f.places = trench_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
