// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "dig/protection.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

double open_time(const Outcome& outcome, int step) {
  if (outcome.calendar == nullptr) return 0;
  for (const OpenTrench& o : outcome.calendar->open)
    if (o.step == step) return o.clock;
  return 0;
}

// One finding for all that are laid back too steep; its numbers are those of the worst.
void check_slope(std::vector<Finding>& findings, const Plan& plan, const Outcome& outcome) {
  Finding f =
      make_finding("sides_chosen", "slope", Severity::error, say("Sides are steeper than the table allows"));
  const auto& steps = outcome.order->steps;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (steps[i].sides != Sides::slope || steps[i].depth < kProtectFrom) continue;
    const double least =
        least_slope(plan.ground.soil, steps[i].depth, open_time(outcome, static_cast<int>(i)));
    if (!falls_short(steps[i].slope, least)) continue;
    set_measure(f, steps[i].slope, std::max(f.required, least), Quantity::slope);
    f.places.push_back(steps[i].line);
  }
  if (f.places.empty()) return;
  f.advice = say("Lay them back as Table B-1 says, or use a shield, or have an engineer design the slope.");
  f.source = say("29 CFR 1926 Subpart P, Table B-1");
  findings.push_back(std::move(f));
}

// Where joints are made somebody has to be in the trench, or everything is joined above it.
void check_stay_out(std::vector<Finding>& findings, const Plan& plan, const Outcome& outcome) {
  if (plan.dig.run_sides != Sides::stay_out || !protection_due(plan.ground.soil, plan.wishes.run_depth))
    return;
  Finding f = make_finding("sides_chosen", "run", Severity::warning,
                           say("Joints are made in header and run, where nobody may go in"));
  set_measure(f, plan.wishes.run_depth, plan.wishes.run_depth);
  f.advice =
      say("Use a shield, shoring or a slope there, or fuse every joint above the trench and let it down.");
  f.source = "29 CFR 1926.652(a)(1)";
  f.places = conduit_places(outcome.layout);
  if (!f.places.empty()) findings.push_back(std::move(f));
}

void check_edge(std::vector<Finding>& findings, const Plan& plan, const Outcome& outcome) {
  if (!falls_short(plan.dig.spoil_off, kSpoilKeptOff)) return;
  Finding f = make_finding("sides_chosen", "spoil", Severity::error, say("Spoil lies too near the edge"));
  set_measure(f, plan.dig.spoil_off, kSpoilKeptOff);
  f.advice = say("Keep it 2 ft (0.61 m) off, or hold it back with boards made for that.");
  f.source = "29 CFR 1926.651(j)(2)";
  f.places = trench_places(outcome.layout);
  findings.push_back(std::move(f));
}

}  // namespace

std::vector<Finding> sides_chosen(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (outcome.order == nullptr || outcome.order->steps.empty()) return findings;
  check_slope(findings, plan, outcome);
  check_stay_out(findings, plan, outcome);
  check_edge(findings, plan, outcome);
  return findings;
}

}  // namespace underlawn::checks
