// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "site/clearances.h"

namespace underlawn::checks {

namespace {

// What the trench may not do to this feature: true when it does, with the distance left.
bool breaks(const Plan& plan, const Feature& feature, const Polyline& line, double& away) {
  if (plan.site.entry && plan.site.entry->house_id == feature.id) {
    // The run has to reach this house; it only may not pass under it.
    away = 0;
    return length_inside(line, feature.points) > kCheckTolerance;
  }
  away = std::max(0.0, line_to_feature(line, feature) - plan.wishes.run_width / 2);
  // Even with a clearance of nothing it may not be run through.
  const FeatureShape shape = shape_of(feature.kind);
  if (shape == FeatureShape::area && length_inside(line, feature.points) > kCheckTolerance) return true;
  if (shape == FeatureShape::line && !meetings(line, feature.points).empty()) return true;
  return falls_short(away, run_clearance(plan.site, feature));
}

void check_conduit(std::vector<Finding>& findings, const Plan& plan, const Outcome& outcome,
                   const Feature& feature, Conduit conduit) {
  double least = std::numeric_limits<double>::infinity();
  std::vector<Polyline> places;
  for (const ConduitLine& c : conduit_lines(outcome.layout)) {
    double away = 0;
    if (c.conduit != conduit || !breaks(plan, feature, c.line, away)) continue;
    least = std::min(least, away);
    places.push_back(c.line);
  }
  if (places.empty()) return;
  const std::string name = display_name(feature);
  Finding f = make_finding("header_run_clearance", conduit_part(conduit) + "/" + feature_part(feature),
                           Severity::error, say("{} is too close to {}", conduit_name(conduit), name));
  set_measure(f, least, run_clearance(plan.site, feature));
  f.advice = say(
      "Move {} or the entry point, or change its clearance if the rule that holds here is another.", name);
  f.source = clearance_reason(plan.site, feature);
  f.places = std::move(places);
  f.places.push_back(drawn(feature));
  findings.push_back(std::move(f));
}

}  // namespace

std::vector<Finding> header_run_clearance(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Feature& feature : plan.site.features) {
    if (crossable(feature) || feature.kind == FeatureKind::tree) continue;
    for (Conduit conduit : {Conduit::run, Conduit::header})
      check_conduit(findings, plan, outcome, feature, conduit);
  }
  return findings;
}

}  // namespace underlawn::checks
