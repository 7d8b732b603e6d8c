// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kVerticalGap = 0.3048;  // m: 12 in between lines that cross

}  // namespace

// Our pipe lies on the floor of the header and run trench; the utility's depth is to its top.
std::vector<Finding> utility_depth_conflict(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Feature& utility : plan.site.features) {
    if (utility.kind != FeatureKind::utility) continue;
    const double gap = std::abs(plan.wishes.run_depth - utility.depth);
    if (!falls_short(gap, kVerticalGap)) continue;
    std::vector<Polyline> where;
    for (const ConduitLine& c : conduit_lines(outcome.layout))
      for (Point p : meetings(c.line, utility.points)) where.push_back({p});
    if (where.empty()) continue;
    Finding f = make_finding("utility_depth_conflict", feature_part(utility), Severity::error,
                             say("The loop's pipes meet {} at the same depth", display_name(utility)));
    set_measure(f, gap, kVerticalGap);
    f.advice = say("Lay header and run at least {} above or below the line's {}.",
                   print_quantity(Quantity::length, kVerticalGap, plan.units),
                   print_quantity(Quantity::length, utility.depth, plan.units));
    f.source = say("12 in between crossing lines: common practice, no source");
    f.places = std::move(where);
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
