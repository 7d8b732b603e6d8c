// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/pipe_size.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kTightestCoil = 18;  // inside diameter of a coil per outside diameter of its pipe

Finding found(Severity severity, std::string title, double measured, double required) {
  Finding f = make_finding("bend_too_tight", "coil", severity, std::move(title));
  set_measure(f, measured, required);
  return f;
}

}  // namespace

// Loops of coiled pipe lie in the curve the pipe was coiled in, so they may be tighter than pipe that is bent
// cold on site; that is worth a hint only. Tighter than pipe is ever coiled, it kinks. Bends of header and
// run are fittings.
std::vector<Finding> bend_too_tight(const Plan& plan, const Outcome& outcome) {
  const auto pipe = find_pipe(plan.wishes.pipe);
  const double loop = outcome.coil.loop_diameter;
  if (!pipe || outcome.coil.loops <= 0) return {};
  const double cold = 2 * pipe->least_bend_radius();
  const double coiled = (kTightestCoil + 1) * pipe->outside_diameter;
  if (!falls_short(loop, cold)) return {};
  Finding f;
  if (falls_short(loop, coiled)) {
    f = found(Severity::error, "The loops kink " + pipe->name, loop, coiled);
    f.advice = "Use loops at least " + print_quantity(Quantity::length, coiled, plan.units) +
               " across, or a smaller pipe.";
    f.source = "coils of pipe at least 18 pipe diameters inside, EN 12201-2 (from memory)";
  } else {
    f = found(Severity::hint, "The loops are tighter than " + pipe->name + " may be bent cold", loop, cold);
    f.advice =
        "Use pipe delivered in coils and lay it in its own curve; tie the loops, force none, warm the coil "
        "in the cold.";
    f.source = "cold bending without fittings: makers' tables by dimension ratio";
  }
  f.places = trench_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
