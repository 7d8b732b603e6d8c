// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/crafted.h"

#include "plan/stake_out.h"

namespace underlawn::crafted {

Plan plan() {
  Plan p;
  p.units = UnitSystem::metric;
  p.site.lot = {{{0, 0}, 3}, {{100, 0}, 3}, {{100, 100}, 3}, {{0, 100}, 3}};
  p.site.features = {feature(1, FeatureKind::house, {{40, 10}, {60, 10}, {60, 20}, {40, 20}})};
  p.site.entry = EntryPoint{1, {50, 20}};
  p.ground.soil = SoilType::stable_rock;
  p.ground.frost_depth = 0;
  p.wishes.circuits = 2;
  p.wishes.loop_diameter = 0.9;
  p.wishes.pipe = "3/4 in DR 11";
  p.wishes.trench_width = 1;
  p.wishes.trench_depth = 1.4;
  p.wishes.spacing = 4;
  p.wishes.end_gap = 2;
  p.wishes.run_width = 0.6;
  p.wishes.run_depth = 1.2;
  p.thermal.load.heat_loss = 1500;
  p.thermal.load.heat_gain = 1000;
  return p;
}

Feature feature(int id, FeatureKind kind, std::vector<Point> points) {
  Feature f;
  f.id = id;
  f.kind = kind;
  f.points = std::move(points);
  f.trench_clearance = 3;
  f.run_clearance = 1;
  return f;
}

Trench trench(int number, Point head, Point end) {
  Trench t;
  t.number = number;
  t.head = head;
  t.end = end;
  t.width = 1;
  t.depth = 1.4;
  t.coil.loop_diameter = 0.9;
  t.coil.pitch = 0.4;
  t.coil.trench_length = distance(head, end);
  t.coil.loops = (t.coil.trench_length - 0.9) / 0.4;
  t.coil.coil_length = 240;
  return t;
}

Outcome outcome(const Plan& plan, std::vector<Trench> trenches) {
  Outcome o;
  if (!trenches.empty()) o.coil = trenches.front().coil;
  Layout& layout = o.layout;
  layout.trenches = std::move(trenches);
  layout.wanted = plan.wishes.circuits;
  layout.fits = static_cast<int>(layout.trenches.size());
  if (!layout.trenches.empty() && plan.site.entry) {
    layout.run.line = {plan.site.entry->at, layout.trenches.front().head};
    layout.run.length = length(layout.run.line);
  }
  Polyline heads;
  for (const Trench& t : layout.trenches) heads.push_back(t.head);
  if (heads.size() >= 2) layout.header = {{heads}, length(heads)};
  o.dig = make_dig(layout, plan.wishes, plan.ground);
  o.stake_out = make_stake_out(plan.site, layout);
  return o;
}

Outcome two_trenches(const Plan& plan) {
  return outcome(plan, {trench(1, {30, 40}, {60, 40}), trench(2, {30, 44}, {60, 44})});
}

std::vector<std::string> keys(const std::vector<Finding>& findings) {
  std::vector<std::string> all;
  for (const Finding& f : findings) all.push_back(f.key);
  return all;
}

}  // namespace underlawn::crafted
