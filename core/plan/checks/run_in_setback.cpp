// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> run_in_setback(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  const auto& lot = plan.site.lot;
  for (std::size_t i = 0; i < lot.size(); ++i)
    for (Conduit conduit : {Conduit::run, Conduit::header}) {
      double least = std::numeric_limits<double>::infinity();
      for (const ConduitLine& c : conduit_lines(outcome.layout))
        if (c.conduit == conduit) least = std::min(least, line_distance(c.line, lot_edge(plan.site, i)));
      const double away = std::max(0.0, least - plan.wishes.run_width / 2);
      if (!falls_short(away, lot[i].setback)) continue;
      Finding f =
          make_finding("run_in_setback", conduit_part(conduit) + "/" + edge_part(i), Severity::error,
                       say("{} is too close to lot edge {}", conduit_name(conduit), std::to_string(i + 1)));
      set_measure(f, away, lot[i].setback);
      f.advice =
          say("Move the entry point, or ask the permit office whether the setback holds for header and run.");
      f.source = say("setback typed for this edge; local codes govern");
      f.places = {lot_edge(plan.site, i)};
      findings.push_back(std::move(f));
    }
  return findings;
}

}  // namespace underlawn::checks
