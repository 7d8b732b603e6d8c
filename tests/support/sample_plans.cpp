// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/sample_plans.h"

namespace underlawn::sample {

namespace {

Feature feature(int id, FeatureKind kind, std::string name, std::vector<Point> points) {
  Feature f;
  f.id = id;
  f.kind = kind;
  f.name = std::move(name);
  f.points = std::move(points);
  return f;
}

Feature tree(int id, std::string name, Point at, double trunk_inches) {
  Feature f = feature(id, FeatureKind::tree, std::move(name), {at});
  f.trunk_diameter = trunk_inches * kFoot / 12;
  return f;
}

Feature utility(int id, std::string name, UtilityKind kind, Polyline line, double depth_feet) {
  Feature f = feature(id, FeatureKind::utility, std::move(name), std::move(line));
  f.utility = kind;
  f.depth = depth_feet * kFoot;
  return f;
}

void add_lot(Plan& plan, const Ring& corners, double setback_feet) {
  for (Point p : corners) plan.site.lot.push_back({p, setback_feet * kFoot});
}

}  // namespace

Point feet(double x, double y) {
  return {x * kFoot, y * kFoot};
}

Ring box_feet(double left, double bottom, double right, double top) {
  return {feet(left, bottom), feet(right, bottom), feet(right, top), feet(left, top)};
}

Plan half_acre() {
  Plan plan;
  plan.title.project = "Half acre";
  add_lot(plan, box_feet(0, 0, 150, 145.2), 10);
  auto& all = plan.site.features;
  all.push_back(feature(house, FeatureKind::house, "House", box_feet(50, 35, 100, 65)));
  all.push_back(feature(septic_tank, FeatureKind::septic_tank, "Septic tank", box_feet(108, 45, 116, 50)));
  all.push_back(feature(drain_field, FeatureKind::drain_field, "Drain field", box_feet(112, 12, 142, 38)));
  all.push_back(feature(reserve, FeatureKind::reserve_field, "Reserve", box_feet(8, 10, 34, 32)));
  all.push_back(feature(well, FeatureKind::well, "Well", {feet(20, 50)}));
  all.back().trench_clearance = 25 * kFoot;
  all.back().run_clearance = 25 * kFoot;
  all.push_back(tree(oak, "Oak", feet(70, 15), 12));
  all.push_back(tree(maple, "Maple", feet(147, 110), 8));
  all.push_back(tree(birch, "Birch", feet(2, 120), 6));
  all.push_back(utility(power, "Power line", UtilityKind::electric, {feet(0, 73), feet(150, 73)}, 2));
  all.push_back(utility(water, "Well line", UtilityKind::water, {feet(20, 50), feet(50, 55)}, 4.5));
  plan.site.entry = EntryPoint{house, feet(80, 65)};
  return plan;
}

Plan tiny_lot() {
  Plan plan;
  plan.title.project = "Tiny lot";
  add_lot(plan, box_feet(0, 0, 40, 60), 10);
  plan.site.features.push_back(feature(house, FeatureKind::house, "House", box_feet(10, 12, 30, 30)));
  plan.site.entry = EntryPoint{house, feet(20, 30)};
  return plan;
}

Plan empty() {
  return Plan{};
}

}  // namespace underlawn::sample
