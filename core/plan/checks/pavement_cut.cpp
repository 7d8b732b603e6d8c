// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> pavement_cut(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Feature& feature : plan.site.features) {
    if (feature.kind != FeatureKind::drive || !feature.may_cross) continue;
    for (Conduit conduit : {Conduit::run, Conduit::header}) {
      const double inside = conduit_inside(outcome.layout, conduit, feature);
      if (inside <= kCheckTolerance) continue;
      Finding f =
          make_finding("pavement_cut", conduit_part(conduit) + "/" + feature_part(feature), Severity::hint,
                       say("{} cuts the pavement of {}", conduit_name(conduit), display_name(feature)));
      set_measure(f, inside, 0);
      f.advice = say("Reckon with sawing, compacting in lifts and restoring the pavement, or bore under it.");
      f.source = say("common practice, no source");
      f.places = {drawn(feature)};
      findings.push_back(std::move(f));
    }
  }
  return findings;
}

}  // namespace underlawn::checks
