// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "base/wording.h"
#include "dig/dig_order.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kOnePlace = 3;  // m: where trucks cross so near together they can cross in one place

bool is_new(const std::vector<Point>& places, Point p) {
  return std::none_of(places.begin(), places.end(), [&](Point q) { return distance(p, q) < kOnePlace; });
}

struct Crossed {
  std::vector<std::string> lines;
  std::vector<Point> places;
};

// Lines that the ways meet, and where.
Crossed crossed_by(const Plan& plan, const std::vector<const Polyline*>& ways, bool every_time) {
  Crossed all;
  for (const Feature& line : plan.site.features) {
    if (line.kind != FeatureKind::utility) continue;
    std::vector<Point> places;
    for (const Polyline* way : ways)
      for (Point p : meetings(*way, line.points))
        if (every_time || is_new(places, p)) places.push_back(p);
    if (!places.empty()) all.lines.push_back(display_name(line));
    all.places.insert(all.places.end(), places.begin(), places.end());
  }
  return all;
}

void add(std::vector<Finding>& findings, const char* who, const std::string& title, const Crossed& crossed) {
  if (crossed.places.empty()) return;
  Finding f = make_finding("way_over_utility", who, Severity::hint, title);
  set_measure(f, static_cast<double>(crossed.places.size()), 0, Quantity::count);
  f.advice = say(
      "Call before you dig and have every one of these lines marked before anything drives there; ask its "
      "owner what may drive over it, cross in one place, straight, over mats or plates.");
  f.source = say("common practice, no source; the line's owner and state law govern");
  for (Point p : crossed.places) f.places.push_back({p});
  findings.push_back(std::move(f));
}

}  // namespace

// One finding for the machine and one for the trucks: all lines that they drive over, from step to step or
// out again. Counts the places.
std::vector<Finding> way_over_utility(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (outcome.order == nullptr) return findings;
  std::vector<const Polyline*> machine{&outcome.order->way_out}, trucks;
  for (const DigStep& step : outcome.order->steps) {
    machine.push_back(&step.way);
    trucks.push_back(&step.truck_way);
    trucks.push_back(&step.fill_way);
  }
  const Crossed dug = crossed_by(plan, machine, true), hauled = crossed_by(plan, trucks, false);
  add(findings, "machine", say("The machine's way crosses {}", joined_and(dug.lines)), dug);
  add(findings, "trucks", say("The trucks' way crosses {}", joined_and(hauled.lines)), hauled);
  return findings;
}

}  // namespace underlawn::checks
