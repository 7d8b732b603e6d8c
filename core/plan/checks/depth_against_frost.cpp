// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/plan_troubles.h"

namespace underlawn::checks {

namespace {

void check_depth(std::vector<Finding>& findings, const Plan& plan, double depth, const std::string& part,
                 std::string title, std::vector<Polyline> places) {
  if (places.empty() || !falls_short(depth, plan.ground.frost_depth)) return;
  Finding f = make_finding("depth_against_frost", part, Severity::warning, std::move(title));
  set_measure(f, depth, plan.ground.frost_depth);
  f.advice =
      say("Dig below the frost line, or insulate and make sure the fluid's freeze protection covers it.");
  f.source = say("pipes below the frost line: common practice, no source");
  f.places = std::move(places);
  findings.push_back(std::move(f));
}

}  // namespace

std::vector<Finding> depth_against_frost(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (!ground_troubles(plan).empty()) return findings;
  double shallowest = std::numeric_limits<double>::infinity();
  for (const Trench& t : outcome.layout.trenches) shallowest = std::min(shallowest, t.depth);
  check_depth(findings, plan, shallowest, "trenches", say("Coils lie above the frost line"),
              trench_places(outcome.layout));
  check_depth(findings, plan, plan.wishes.run_depth, "run", say("Header and run lie above the frost line"),
              conduit_places(outcome.layout));
  return findings;
}

}  // namespace underlawn::checks
