// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "dig/dig_order.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/checks/step_words.h"

namespace underlawn::checks {

namespace {

constexpr double kSpoilFromEdge = 0.6096;  // m: 2 ft, 29 CFR 1926.651(j)(2)

// One side of a trench: the room from its edge to the next trench's edge less what spoil keeps from that too,
// or to the lot line, or to a house.
struct Side {
  Segment edge;
  Point out;  // unit, away from the trench
};

bool lies_beyond(const Side& side, const Ring& ring) {
  return std::any_of(ring.begin(), ring.end(),
                     [&](Point p) { return dot(p - side.edge.a, side.out) > kCheckTolerance; });
}

// The heap as long as the leg of the trench, from `near` to `far` off its edge.
Ring heap(const Side& side, double near, double far) {
  const Point middle = 0.5 * (near + far) * side.out;
  return rectangle_along({side.edge.a + middle, side.edge.b + middle}, far - near);
}

double room(const Plan& plan, const Layout& layout, const Trench& t, const Side& side, double reach) {
  const Polyline edge = {side.edge.a, side.edge.b};
  const Ring strip = heap(side, kCheckTolerance, reach);
  double least = std::numeric_limits<double>::infinity();
  for (const Trench& other : layout.trenches) {
    if (other.number == t.number || !lies_beyond(side, outline(other))) continue;
    if (falls_short(area_distance(strip, outline(other)), kSpoilFromEdge))
      least = std::min(least, line_area_distance(edge, outline(other)) - kSpoilFromEdge);
  }
  for (std::size_t i = 0; i < plan.site.lot.size(); ++i) {
    const Polyline line = lot_edge(plan.site, i);
    if (line_area_distance(line, strip) == 0) least = std::min(least, line_distance(edge, line));
  }
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house && area_distance(strip, f.points) == 0)
      least = std::min(least, line_area_distance(edge, f.points));
  return least;
}

// The room on the better side of the trench, where it is least.
double best_room(const Plan& plan, const Layout& layout, const Trench& t, double needed) {
  double best = 0;
  for (double sign : {1.0, -1.0}) {
    double all_along = std::numeric_limits<double>::infinity();
    for (const Segment& leg : legs_of(axis(t))) {
      const Point left = left_normal(unit(leg.b - leg.a));
      const Point off = sign * t.width / 2 * left;
      all_along =
          std::min(all_along, room(plan, layout, t, {{leg.a + off, leg.b + off}, sign * left}, needed));
    }
    best = std::max(best, all_along);
  }
  return best;
}

}  // namespace

namespace {

// An order of digging was sought: what it found no room for.
std::vector<Finding> without_room(const Plan& plan, const Outcome& outcome) {
  Finding f = make_finding("spoil_room", "trenches", Severity::warning, "");
  std::vector<const DigStep*> steps;
  std::string why;
  for (const DigStep& step : outcome.order->steps) {
    if (step.no_room.empty()) continue;
    steps.push_back(&step);
    if (why.empty()) why = step.no_room;
    f.places.push_back(step.line);
    const SpoilHeap heap = spoil_heap(step.work.loose, step.work.length, plan.ground.repose);
    set_measure(f, 0, std::max(f.required, plan.dig.spoil_off + heap.width));
  }
  if (steps.empty()) return {};
  f.title = say("No order of digging leaves room for the spoil of {}", steps_named(steps));
  f.advice =
      say("In the way: {}. Have what finds no room trucked off and brought back, ask for a wider "
          "spacing, or move the trenches.",
          why);
  f.source = say("spoil at least 2 ft from every edge: 29 CFR 1926.651(j)(2)");
  return {f};
}

}  // namespace

// One finding for all such trenches: they are met by one way of digging. Its numbers are those of the worst.
std::vector<Finding> spoil_room(const Plan& plan, const Outcome& outcome) {
  if (outcome.order != nullptr) return without_room(plan, outcome);
  const double heap = outcome.dig.spoil_width;
  const double needed = kSpoilFromEdge + heap;
  Finding f = make_finding("spoil_room", "trenches", Severity::warning, "");
  set_measure(f, needed, needed);
  std::vector<std::string> numbers;
  for (const Trench& t : outcome.layout.trenches) {
    const double best = best_room(plan, outcome.layout, t, needed);
    if (heap <= 0 || !falls_short(best, needed)) continue;
    f.measured = std::min(f.measured, best);
    f.places.push_back(axis(t));
    numbers.push_back(std::to_string(t.number));
  }
  if (f.places.empty()) return {};
  f.title = say("No room for the spoil beside {}", trenches_listed(numbers));
  f.advice = say(
      "Dig and backfill one trench before the next is opened, carry spoil away, or ask for a wider spacing.");
  f.source = say("spoil at least 2 ft from every edge: 29 CFR 1926.651(j)(2)");
  return {f};
}

}  // namespace underlawn::checks
