// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "site/clearances.h"

namespace underlawn::checks {

namespace {

double distance_of(const Plan& plan, const Outcome& outcome, const Feature& tree, Conduit conduit) {
  double least = std::numeric_limits<double>::infinity();
  for (const ConduitLine& c : conduit_lines(outcome.layout))
    if (c.conduit == conduit)
      least = std::min(least, line_to_feature(c.line, tree) - plan.wishes.run_width / 2);
  return std::max(0.0, least);
}

}  // namespace

std::vector<Finding> run_in_root_zone(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Feature& tree : plan.site.features) {
    if (tree.kind != FeatureKind::tree) continue;
    for (Conduit conduit : {Conduit::run, Conduit::header}) {
      const double away = distance_of(plan, outcome, tree, conduit);
      const double required = run_clearance(plan.site, tree);
      if (!falls_short(away, required)) continue;
      Finding f = make_finding("run_in_root_zone", conduit_part(conduit) + "/" + feature_part(tree),
                               Severity::warning,
                               say("{} cuts the roots of {}", conduit_name(conduit), display_name(tree)));
      set_measure(f, away, required);
      f.advice = say("Lead it round, tunnel under the roots by hand, or ask an arborist.");
      f.source = clearance_reason(plan.site, tree);
      f.places = {tree.points};
      findings.push_back(std::move(f));
    }
  }
  return findings;
}

}  // namespace underlawn::checks
