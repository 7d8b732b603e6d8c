// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plane/strip.h"

namespace underlawn::checks {

namespace {

// The trench less the first stretch at its head, where header or run come in, from the side too.
Ring beyond_head(const Trench& t) {
  const double in = std::min(t.width, length_of(t) / 2);
  return strip_along(trimmed(axis(t), in, 0), t.width);
}

}  // namespace

// The supply trench is the run's own: there the two lie together on purpose.
std::vector<Finding> run_through_trench(const Plan&, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const Trench& t : outcome.layout.trenches) {
    if (t.role == TrenchRole::supply) continue;
    for (Conduit conduit : {Conduit::run, Conduit::header}) {
      double inside = 0;
      for (const ConduitLine& c : conduit_lines(outcome.layout))
        if (c.conduit == conduit) inside += length_inside(c.line, beyond_head(t));
      if (inside <= kCheckTolerance) continue;
      Finding f = make_finding(
          "run_through_trench", conduit_part(conduit) + "/" + trench_part(t), Severity::error,
          say("{} crosses the coil of trench {}", conduit_name(conduit), std::to_string(t.number)));
      set_measure(f, inside, 0);
      f.advice = say(
          "Leave room for it round the trench: a shorter trench, a wider spacing or another entry point.");
      f.source = say("a coil is not dug up again for a crossing pipe: common practice, no source");
      f.places = {axis(t)};
      findings.push_back(std::move(f));
    }
  }
  return findings;
}

}  // namespace underlawn::checks
