// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> easement_crossed(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Feature& feature : plan.site.features) {
    if (feature.kind != FeatureKind::easement || !feature.may_cross) continue;
    for (Conduit conduit : {Conduit::run, Conduit::header}) {
      const double inside = conduit_inside(outcome.layout, conduit, feature);
      if (inside <= kCheckTolerance) continue;
      Finding f =
          make_finding("easement_crossed", conduit_part(conduit) + "/" + feature_part(feature),
                       Severity::warning, say("{} lies in {}", conduit_name(conduit), display_name(feature)));
      set_measure(f, inside, 0);
      f.advice = say("Get the consent of whoever holds the easement before digging, in writing.");
      f.source = say(
          "an easement gives its holder a say; local codes govern (Upper Dublin PA allows no encroachment)");
      f.places = {drawn(feature)};
      findings.push_back(std::move(f));
    }
  }
  return findings;
}

}  // namespace underlawn::checks
