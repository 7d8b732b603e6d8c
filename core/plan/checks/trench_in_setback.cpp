// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> trench_in_setback(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  const auto& lot = plan.site.lot;
  for (const Trench& t : outcome.layout.trenches)
    for (std::size_t i = 0; i < lot.size(); ++i) {
      const double away = line_area_distance(lot_edge(plan.site, i), outline(t));
      if (!falls_short(away, lot[i].setback)) continue;
      Finding f = make_finding("trench_in_setback", trench_part(t) + "/" + edge_part(i), Severity::error,
                               say("{} is too close to lot edge {}", trench_name(t), std::to_string(i + 1)));
      set_measure(f, away, lot[i].setback);
      f.advice =
          say("Shorten or move the trench, or ask the permit office whether a smaller setback holds here.");
      f.source = say("setback typed for this edge; local codes govern");
      f.places = {axis(t), lot_edge(plan.site, i)};
      findings.push_back(std::move(f));
    }
  return findings;
}

}  // namespace underlawn::checks
