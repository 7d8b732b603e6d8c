// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "field/straight.h"
#include "pipe/pipe_size.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/plan_troubles.h"

namespace underlawn::checks {

namespace {

struct Need {
  double width = 0;  // m
  std::string title, advice, source;
};

Need needed(const Plan& plan, const Coil& coil) {
  const auto width = [&](double w) { return print_quantity(Quantity::length, w, plan.units); };
  if (coil.pattern == CoilPattern::flat_coil)
    return {coil.loop_diameter, say("The loops are wider than the trench"),
            say("Dig at least {} wide, or use smaller loops.", width(coil.loop_diameter)),
            say("the coil lies flat on the trench floor, its loops measured along the pipe's middle: the "
                "crew presses "
                "them in by a pipe's width (common practice, no source)")};
  if (pipe_sides(coil.pattern) > 1)
    return {coil.side_distance, say("The pipes lie farther apart than the trench is wide"),
            say("Dig at least {} wide, or lay the pipes closer.", width(coil.side_distance)),
            say("the pipes lie on the trench floor")};
  const auto pipe = find_pipe(plan.wishes.pipe);
  const double strands = coil.pattern == CoilPattern::upright_coil ? 2 : 1;  // a loop, and one beside it
  const double needed = pipe ? strands * pipe->outside_diameter : 0;
  return {needed, say("The pipe is wider than the trench"),
          say("Dig at least {} wide, or use smaller pipe.", width(needed)),
          say("the pipe goes down between the walls")};
}

}  // namespace

// Loops are named by their centre line, and 3 ft loops in a 3 ft trench are usual: the crew presses them in
// by the pipe's own half-thickness on each side (27 mm of 914 in all for 3/4 in), so that is not held against
// them.
std::vector<Finding> coil_wider_than_trench(const Plan& plan, const Outcome& outcome) {
  const Need need = needed(plan, outcome.coil);
  if (!outcome.coil.laid() || !wishes_troubles(plan).empty()) return {};
  if (!falls_short(plan.wishes.trench_width, need.width)) return {};
  Finding f = make_finding("coil_wider_than_trench", "coil", Severity::error, need.title);
  set_measure(f, plan.wishes.trench_width, need.width);
  f.advice = need.advice;
  f.source = need.source;
  f.places = trench_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
