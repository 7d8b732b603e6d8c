// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

std::vector<Finding> tie_hidden(const Plan&, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Tie& tie : outcome.stake_out.ties) {
    if (tie.cut != 0) continue;
    Finding f = make_finding("tie_hidden", tie_part(tie), Severity::warning,
                             "No two house corners see the point " + tie.point);
    set_measure(f, 0, 2, Quantity::count);
    f.advice = "Stake it from neighbouring points, or set an auxiliary stake that two corners see.";
    f.source = "a tape has to run straight from both corners";
    f.places = {{tie.at}};
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
