// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kUnequal = 0.02;  // of the longest

}  // namespace

// Circuits side by side on one header share the flow by their lengths.
std::vector<Finding> coil_cut_unequal(const Plan&, const Outcome& outcome) {
  std::vector<Finding> findings;
  double longest = 0;
  for (const Trench& t : outcome.layout.trenches) longest = std::max(longest, t.coil.coil_length);
  for (const Trench& t : outcome.layout.trenches) {
    const double least = (1 - kUnequal) * longest;
    if (!falls_short(t.coil.coil_length, least)) continue;
    Finding f =
        make_finding("coil_cut_unequal", trench_part(t), Severity::warning,
                     say("The coil of trench {} is shorter than the others", std::to_string(t.number)));
    set_measure(f, t.coil.coil_length, least);
    f.advice = say("Use coils of one length, or balance the circuits with valves.");
    f.source = say("circuits within 2 % of one length: common practice, no source");
    f.places = {axis(t)};
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
