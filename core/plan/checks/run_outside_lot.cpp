// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

// From the edge of the trench to the lot line, negative outside.
double room(const Ring& lot, const Polyline& line, double width) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < lot.size(); ++i)
    least = std::min(least, line_distance(line, Polyline{lot[i], lot[(i + 1) % lot.size()]}));
  for (Point p : line) {
    const double out = distance(lot, p);
    if (out > kSamePlace) least = std::min(least, -out);
  }
  return least - width / 2;
}

}  // namespace

std::vector<Finding> run_outside_lot(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  const Ring lot = lot_ring(plan.site);
  for (Conduit conduit : {Conduit::run, Conduit::header}) {
    Finding f = make_finding("run_outside_lot", conduit_part(conduit), Severity::error,
                             say("{} leaves the lot", conduit_name(conduit)));
    double least = std::numeric_limits<double>::infinity();
    for (const ConduitLine& c : conduit_lines(outcome.layout)) {
      if (c.conduit != conduit) continue;
      const double here = room(lot, c.line, plan.wishes.run_width);
      least = std::min(least, here);
      if (falls_short(here, 0)) f.places.push_back(c.line);
    }
    if (f.places.empty()) continue;
    set_measure(f, least, 0);
    f.advice = say("Move the entry point or free a way inside the lot.");
    f.source = say("plain ownership");
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
