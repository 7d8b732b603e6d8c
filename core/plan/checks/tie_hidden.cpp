// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

// One finding for all such stakes: they are met by one auxiliary stake or two. Counts the stakes.
std::vector<Finding> tie_hidden(const Plan&, const Outcome& outcome) {
  std::vector<std::string> names;
  std::vector<Polyline> places;
  for (const Tie& tie : outcome.stake_out.ties) {
    if (tie.cut != 0) continue;
    names.push_back(tie.point);
    places.push_back({tie.at});
  }
  if (names.empty()) return {};
  Finding f = make_finding("tie_hidden", "stakes", Severity::warning,
                           say("No two house corners see {}", stakes_listed(names)));
  set_measure(f, static_cast<double>(names.size()), 0, Quantity::count);
  f.advice = say("Stake them from neighbouring points, or set an auxiliary stake that two corners see.");
  f.source = say("a tape has to run straight from both corners");
  f.places = std::move(places);
  return {f};
}

}  // namespace underlawn::checks
