// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kFromEnd = 0.05;  // m: a leg that begins on another does not cross it

double to_ends(const Polyline& line, Point p) {
  return std::min(distance(line.front(), p), distance(line.back(), p));
}

}  // namespace

// Header and run, and the headers of several groups of trenches: one trench of pipes across another.
std::vector<Finding> conduits_cross(const Plan&, const Outcome& outcome) {
  const std::vector<ConduitLine> lines = conduit_lines(outcome.layout);
  Finding f = make_finding("conduits_cross", "", Severity::warning, "");
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      for (Point p : meetings(lines[i].line, lines[j].line))
        if (std::min(to_ends(lines[i].line, p), to_ends(lines[j].line, p)) > kFromEnd)
          f.places.push_back({p});
  if (f.places.empty()) return {};
  const auto places = static_cast<double>(f.places.size());
  f.title = f.places.size() > 1 ? say("Header trenches cross at {} places", f.places.size())
                                : say("Header trenches cross at {} place", f.places.size());
  set_measure(f, places, 0, Quantity::count);
  f.advice = say(
      "Hold one header's line elsewhere, or dig one of them deeper there and keep a bedding's depth between "
      "the "
      "pipes.");
  f.source =
      say("pipes that cross are laid one above the other with soil between: common practice, no source");
  return {f};
}

}  // namespace underlawn::checks
