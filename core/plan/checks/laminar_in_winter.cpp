// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kTurbulent = 2300;  // Reynolds number below which flow is laminar, Gnielinski 2013

}  // namespace

std::vector<Finding> laminar_in_winter(const Plan&, const Outcome& outcome) {
  if (outcome.flow == nullptr) return {};
  const Flow& flow = *outcome.flow;
  double least = 1e300;
  for (int c : flow.loop.circuits)
    least = std::min(least, flow.coldest.flow.pipes[static_cast<std::size_t>(c)].reynolds);
  if (least >= kTurbulent) return {};
  Finding f = make_finding("laminar_in_winter", "", Severity::hint,
                           say("Flow in the coils is laminar at the coldest"));
  set_measure(f, least, kTurbulent, Quantity::count);
  f.advice = say(
      "It takes up less heat, which the temperatures count in; a thinner fluid, fewer circuits or more flow "
      "raise it.");
  f.source = say("Gnielinski 2013");
  f.places = trench_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
