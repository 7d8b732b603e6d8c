// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "dig/dig_order.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kOnePlace = 3;  // m: where trucks cross so near together they can cross in one place

bool is_new(const std::vector<Point>& places, Point p) {
  return std::none_of(places.begin(), places.end(), [&](Point q) { return distance(p, q) < kOnePlace; });
}

}  // namespace

// One finding for each utility that machine or truck drives over, from step to step or out again. Counts the
// places.
std::vector<Finding> way_over_utility(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (outcome.order == nullptr) return findings;
  for (const Feature& line : plan.site.features) {
    if (line.kind != FeatureKind::utility) continue;
    std::vector<Point> places = meetings(outcome.order->way_out, line.points);
    for (const DigStep& step : outcome.order->steps)
      for (const Polyline* way : {&step.way, &step.truck_way, &step.fill_way})
        for (Point p : meetings(*way, line.points))
          if (way == &step.way || is_new(places, p)) places.push_back(p);
    if (places.empty()) continue;
    Finding f = make_finding("way_over_utility", feature_part(line), Severity::hint,
                             say("The machine's way crosses {}", display_name(line)));
    set_measure(f, static_cast<double>(places.size()), 0, Quantity::count);
    f.advice = say(
        "Call before you dig and have the {} line marked before the machine comes; ask its owner what may "
        "drive over it, cross in one place, straight, over mats or plates.",
        utility_name(line.utility));
    f.source = say("common practice, no source; the line's owner and state law govern");
    for (Point p : places) f.places.push_back({p});
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
