// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

bool lot_line_cuts(const Ring& lot, const Ring& core) {
  for (std::size_t i = 0; i < lot.size(); ++i)
    if (line_area_distance(Polyline{lot[i], lot[(i + 1) % lot.size()]}, core) == 0) return true;
  return false;
}

// How far the trench reaches out: its corners beyond the lot line, or a corner of the lot line that reaches
// in.
double reach_out(const Ring& lot, const Ring& trench) {
  double most = 0;
  for (Point p : trench) most = std::max(most, distance(lot, p));
  for (Point p : lot) {
    if (!contains(trench, p)) continue;
    double in = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < trench.size(); ++i)
      in = std::min(in, distance(Segment{trench[i], trench[(i + 1) % trench.size()]}, p));
    most = std::max(most, in);
  }
  return most;
}

}  // namespace

std::vector<Finding> trench_outside_lot(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  const Ring lot = lot_ring(plan.site);
  for (const Trench& t : outcome.layout.trenches) {
    const double out = reach_out(lot, outline(t));
    if (out <= kCheckTolerance && !lot_line_cuts(lot, core_of(t))) continue;
    Finding f = make_finding("trench_outside_lot", trench_part(t), Severity::error,
                             say("{} leaves the lot", trench_name(t)));
    set_measure(f, out, 0);
    f.advice =
        say("Do not dig it there: move the lot line if it is wrong, or change length, spacing or circuits.");
    f.source = say("plain ownership");
    f.places = {axis(t)};
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
