// SPDX-License-Identifier: GPL-3.0-or-later
#include <limits>

#include "base/say.h"
#include "dig/dig_ground.h"
#include "dig/machine_ways.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

struct Tight {
  double machine = std::numeric_limits<double>::infinity();  // m left beside its width
  double trucks = machine;
  Polyline gap;  // where it is tightest, from the middle of the way to it
};

// The shortest line from the way to the outline.
Polyline gap_between(const Polyline& way, const Ring& outline) {
  Polyline gap{way.front(), outline.front()};
  const auto take = [&gap](Point on_way, Point on_thing) {
    if (distance(on_way, on_thing) < distance(gap[0], gap[1])) gap = {on_way, on_thing};
  };
  for (std::size_t i = 1; i < way.size(); ++i)
    for (std::size_t j = 0; j < outline.size(); ++j) {
      const Segment leg{way[i - 1], way[i]}, side{outline[j], outline[(j + 1) % outline.size()]};
      for (Point p : {leg.a, leg.b}) take(p, nearest_on(side, p));
      take(nearest_on(leg, side.a), side.a);
    }
  return gap;
}

void add(Tight& tight, double& least, const Polyline& way, double width, const Feature& f) {
  if (way.size() < 2) return;
  const double left = std::max(0.0, line_to_feature(way, f) - width / 2);
  if (left < std::min(tight.machine, tight.trucks)) tight.gap = gap_between(way, f.points);
  least = std::min(least, left);
}

Tight measured(const DigOrder& order, const Machine& excavator, const Feature& f) {
  Tight t;
  for (const DigStep& step : order.steps) {
    add(t, t.machine, step.way, excavator.width, f);
    add(t, t.trucks, step.truck_way, kTruckWidth, f);
    add(t, t.trucks, step.fill_way, kTruckWidth, f);
  }
  add(t, t.machine, order.way_out, excavator.width, f);
  return t;
}

std::string title_of(const Feature& f, const Tight& t) {
  const bool machine = falls_short(t.machine, driven_off(f)), trucks = falls_short(t.trucks, driven_off(f));
  if (machine && trucks) return say("Machine and trucks pass close by {}", display_name(f));
  return machine ? say("The machine passes close by {}", display_name(f))
                 : say("Trucks pass close by {}", display_name(f));
}

Finding finding_of(const Feature& f, const Tight& t) {
  const bool wall = f.kind == FeatureKind::house;
  Finding made =
      make_finding("way_tight", feature_part(f), wall ? Severity::hint : Severity::warning, title_of(f, t));
  set_measure(made, std::min(t.machine, t.trucks), driven_off(f));
  made.advice =
      wall
          ? say("There is no way that leaves more beside wheels or tracks. Have somebody walk ahead, guard "
                "corner, meters and steps with planks; or take narrower trucks, or let them in on another "
                "side.")
          : say("There is no way that leaves more beside wheels or tracks. Have its edge and its pipes found "
                "and staked, lay plates or mats, send half loads, never a wheel on it; or take narrower "
                "trucks, or let them in on another side.");
  made.source = translated(kCommonPractice);
  made.places = {t.gap};
  return made;
}

}  // namespace

// One finding a building, tank or drain field that a way of machine or trucks passes nearer than is asked,
// measured on the ways as they come out.
std::vector<Finding> way_tight(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  if (outcome.order == nullptr) return findings;
  for (const Feature& f : plan.site.features) {
    if (!(driven_off(f) > 0) || f.points.size() < 3) continue;
    const Tight t = measured(*outcome.order, plan.dig.excavator, f);
    if (falls_short(std::min(t.machine, t.trucks), driven_off(f))) findings.push_back(finding_of(f, t));
  }
  return findings;
}

}  // namespace underlawn::checks
