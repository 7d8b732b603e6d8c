// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <numbers>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plane/thin_cut.h"

namespace underlawn::checks {

// At an angle of c an error of the tape moves the point by 1/sin(c) of it. One finding for all such stakes,
// with the worst angle.
std::vector<Finding> tie_cut(const Plan&, const Outcome& outcome) {
  std::vector<std::string> names;
  Finding f = make_finding("tie_cut", "stakes", Severity::hint, "");
  set_measure(f, kThinCut, kThinCut, Quantity::angle);
  for (const Tie& tie : outcome.stake_out.ties) {
    if (tie.cut == 0 || tie.cut >= kThinCut) continue;
    names.push_back(tie.point);
    f.measured = std::min(f.measured, tie.cut);
    f.places.push_back({tie.at});
  }
  if (names.empty()) return {};
  f.title = say("The tapes cut at a poor angle at {}", stakes_listed(names));
  f.advice = say("Tape these twice, or check each by its distance from a neighbouring stake.");
  f.source = say(
      "plain geometry; the 30 degrees: well-conditioned triangles of surveying textbooks, common practice");
  return {f};
}

}  // namespace underlawn::checks
