// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "site/clearances.h"

namespace underlawn::checks {

namespace {

// Where machine digging would come into the tolerance zone: the crossings, or the whole line where it only
// runs near.
std::vector<Polyline> places(const Outcome& outcome, const Feature& utility, Conduit conduit,
                             double half_width, double& away) {
  std::vector<Polyline> found;
  for (const ConduitLine& c : conduit_lines(outcome.layout)) {
    if (c.conduit != conduit) continue;
    const double here = std::max(0.0, line_to_feature(c.line, utility) - half_width);
    if (!falls_short(here, kToleranceZone)) continue;
    away = std::min(away, here);
    const std::vector<Point> crossings = meetings(c.line, utility.points);
    for (Point p : crossings) found.push_back({p});
    if (crossings.empty()) found.push_back(c.line);
  }
  return found;
}

}  // namespace

std::vector<Finding> utility_crossing(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Feature& utility : plan.site.features) {
    if (utility.kind != FeatureKind::utility) continue;
    for (Conduit conduit : {Conduit::run, Conduit::header}) {
      double away = std::numeric_limits<double>::infinity();
      auto where = places(outcome, utility, conduit, plan.wishes.run_width / 2, away);
      if (where.empty()) continue;
      Finding f = make_finding(
          "utility_crossing", conduit_part(conduit) + "/" + feature_part(utility), Severity::warning,
          away > 0 ? say("{} passes close to {}: dig by hand", conduit_name(conduit), display_name(utility))
                   : say("{} meets {}: dig by hand", conduit_name(conduit), display_name(utility)));
      set_measure(f, away, kToleranceZone);
      f.advice =
          say("Have the {} line located and marked, and expose it by hand before any machine comes near. "
              "Private lines are not marked by the utility.",
              utility_name(utility.utility));
      f.source = say("tolerance zone of 18 in each side (laonecall.com); state law governs");
      f.places = std::move(where);
      findings.push_back(std::move(f));
    }
  }
  return findings;
}

}  // namespace underlawn::checks
