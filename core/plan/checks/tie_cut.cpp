// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kLeastCut = 20 * std::numbers::pi / 180;  // rad

}  // namespace

// At an angle of c an error of the tape moves the point by 1/sin(c) of it: three times at 20 degrees.
std::vector<Finding> tie_cut(const Plan&, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Tie& tie : outcome.stake_out.ties) {
    if (tie.cut == 0 || tie.cut >= kLeastCut) continue;
    Finding f = make_finding("tie_cut", tie_part(tie), Severity::hint,
                             "The tapes to point " + tie.point + " cut at a poor angle");
    set_measure(f, tie.cut, kLeastCut, Quantity::angle);
    f.advice = "Tape it twice, or check it by its distance from a neighbouring stake.";
    f.source = "plain geometry; the 20 degrees are common practice, no source";
    f.places = {{tie.at}};
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
