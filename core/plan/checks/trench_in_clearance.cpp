// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "site/clearances.h"

namespace underlawn::checks {

std::vector<Finding> trench_in_clearance(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Trench& t : outcome.layout.trenches)
    for (const Feature& feature : plan.site.features) {
      const double required = trench_clearance(plan.site, feature);
      const double away = area_to_feature(outline(t), feature);
      const bool overlaps = area_to_feature(core_of(t), feature) == 0;
      if (!overlaps && !falls_short(away, required)) continue;
      const std::string name = display_name(feature);
      Finding f =
          make_finding("trench_in_clearance", trench_part(t) + "/" + feature_part(feature), Severity::error,
                       overlaps ? say("{} lies in {}", trench_name(t), name)
                                : say("{} is too close to {}", trench_name(t), name));
      set_measure(f, away, required);
      f.advice = say(
          "Move the trench off {}, or change its clearance if the rule that holds here is another.", name);
      f.source = clearance_reason(plan.site, feature);
      f.places = {axis(t), drawn(feature)};
      findings.push_back(std::move(f));
    }
  return findings;
}

}  // namespace underlawn::checks
