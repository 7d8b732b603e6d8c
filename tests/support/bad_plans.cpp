// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/bad_plans.h"

#include "cost/bill.h"
#include "dig/dig_order.h"
#include "plan/solve.h"
#include "support/crafted.h"
#include "support/sample_plans.h"
#include "thermal/surroundings.h"

namespace underlawn::bad {

namespace {

using crafted::feature;
using crafted::trench;

// One of each kind, in the way of what geometry() digs.
Plan crowded() {
  Plan p = crafted::plan();
  p.ground.soil = SoilType::type_c;
  p.ground.frost_depth = 3;
  p.wishes.trench_depth = 2;
  p.wishes.run_depth = 1.7;
  p.wishes.pipe = "1-1/4 in DR 11";
  p.wishes.trench_width = 0.4;
  std::vector<Feature>& all = p.site.features;
  all.push_back(feature(2, FeatureKind::drive, {{45, 24}, {55, 24}, {55, 28}, {45, 28}}));
  all.push_back(feature(3, FeatureKind::easement, {{30, 30}, {70, 30}, {70, 34}, {30, 34}}));
  all.push_back(feature(4, FeatureKind::utility, {{0, 22}, {100, 22}}));
  all.push_back(feature(5, FeatureKind::tree, {{52, 36}}));
  all.push_back(feature(6, FeatureKind::septic_tank, {{29, 39}, {31, 39}, {31, 41}, {29, 41}}));
  all.push_back(feature(7, FeatureKind::well, {{28, 44}}));
  all.push_back(feature(8, FeatureKind::no_dig, {{48, 29}, {52, 29}, {52, 30}, {48, 30}}));
  all.push_back(feature(9, FeatureKind::utility, {{50.7, 22.5}, {50.7, 39}}));
  all[3].depth = 1.65;
  all[8].utility = UtilityKind::water;
  for (Feature& f : all) f.trench_clearance.reset();
  p.site.rules = {{FeatureKind::septic_tank, 4, 2}};
  return p;
}

Outcome judged(const Plan& plan, const Layout& layout) {
  Outcome o = crafted::outcome(plan, layout.trenches);
  o.layout.run = layout.run;
  o.layout.header = layout.header;
  o.coil = layout.trenches.front().coil;
  o.dig = make_dig(o.layout, plan.wishes, plan.ground, {}, plan.dig);
  o.stake_out = make_stake_out(plan.site, o.layout);
  return o;
}

Case geometry() {
  const Plan p = crowded();
  Layout l;
  l.trenches = {trench(1, {30, 40}, {60, 40}), trench(2, {30, 41.2}, {60, 41.2}),
                trench(3, {60, 43}, {90, 43}), trench(4, {70, 99}, {104, 99}),
                trench(5, {40, 1}, {40, 8}),   trench(6, {30, 60}, {60, 60})};
  for (Trench& t : l.trenches) {
    t.depth = 2;
    t.width = 0.4;
    t.coil.pitch = 0.1;
  }
  l.trenches[1].coil.coil_length = 100;
  l.trenches[5].bends = {{45, 75}, {46, 61}};
  l.run.line = {{50, 20}, {50, 37}, {-5, 37}, {-5, 41}, {35, 41}, {35, 38}, {30, 38}};
  l.run.length = 100;
  l.header = {{{{30, 38}, {30, 41.2}}, {{20, 30}, {40, 42}}, {{70, 99}, {70, 43}, {40, 1}}}, 60};
  return {"geometry", p, judged(p, l)};
}

Case loops(double pitch, double diameter, CoilPattern pattern) {
  Plan p = crafted::plan();
  p.wishes.pattern = pattern;
  p.wishes.side_distance = 2;
  p.wishes.trench_width = 0.01;
  Layout l;
  l.trenches = {trench(1, {30, 40}, {60, 40})};
  Coil& coil = l.trenches[0].coil;
  coil.pattern = pattern;
  coil.pitch = pitch;
  coil.loop_diameter = diameter;
  coil.side_distance = 2;
  l.trenches[0].width = 0.02;
  l.trenches[0].bends = {{40, 50}, {45, 41}};
  l.run.line = {{50, 20}, {30, 40}};
  return {"loops", p, judged(p, l)};
}

Case too_few() {
  Plan p = sample::tiny_lot();
  return {"too few", p, solve(p)};
}

// A stake that no two corners see.
Case hidden() {
  Plan p = crafted::plan();
  Outcome o = crafted::two_trenches(p);
  o.stake_out.ties[0].cut = 0;
  return {"hidden", p, o};
}

Case nowhere() {
  Plan p = crafted::plan();
  p.site.entry.reset();
  p.site.features.push_back(
      crafted::feature(9, FeatureKind::utility, {{30, 15}, {70, 15}}));  // through the house
  return {"nowhere", p, crafted::two_trenches(p)};
}

// ---- digging ----

Outcome with_order(const Plan& p, double spacing) {
  std::vector<Trench> all;
  for (int i = 0; i < 3; ++i) all.push_back(trench(i + 1, {30, 40 + spacing * i}, {60, 40 + spacing * i}));
  for (Trench& t : all) t.depth = p.wishes.trench_depth;
  Outcome o = crafted::outcome(p, all);
  o.dig = make_dig(o.layout, p.wishes, p.ground, {}, p.dig);
  o.order = std::make_shared<DigOrder>(make_dig_order(p.site, o.layout, o.dig, p.wishes, p.ground, p.dig));
  return o;
}

Case digging() {
  Plan p = crafted::plan();
  p.ground.soil = SoilType::type_b;
  p.wishes.trench_depth = 1.8;
  p.wishes.run_depth = 1.6;
  p.dig.coil_sides = Sides::slope;
  p.dig.run_sides = Sides::stay_out;
  p.dig.slope = 0.8;
  p.dig.spoil_off = 0.3;
  p.dig.excavator.depth = 1.3;
  p.dig.excavator.reach = 2;
  Outcome o = with_order(p, 3.6);
  DigOrder order = *o.order;
  DigStep& first = order.steps.front();
  const Point at = order.steps.back().line.front();
  first.spoil = {{{at.x - 5, at.y - 5}, {at.x + 5, at.y - 5}, {at.x + 5, at.y + 5}, {at.x - 5, at.y + 5}}};
  for (DigStep& step : order.steps) {
    step.no_room = say("the lot line");
    step.reached = step.room_to_end = false;
  }
  first.filled_first = {2, 3};
  order.access.reset();
  o.order = std::make_shared<DigOrder>(order);
  return {"digging", p, o};
}

Case steep() {
  Plan p = crafted::plan();
  p.ground.soil = SoilType::type_c;
  p.wishes.trench_depth = 7;
  p.wishes.run_depth = 6.5;
  p.dig.coil_sides = Sides::slope;
  Outcome o = with_order(p, 3);
  o.order = nullptr;
  o.layout.trenches.push_back(trench(4, {4, 40}, {4, 60}));
  o.layout.trenches.push_back(trench(5, {62, 12}, {75, 12}));
  for (Trench& t : o.layout.trenches) t.depth = 7;
  o.dig = make_dig(o.layout, p.wishes, p.ground, {}, p.dig);
  return {"steep", p, o};
}

// ---- heat and flow ----

Case heat() {
  Plan p = crafted::plan();
  Outcome o = crafted::two_trenches(p);
  YearSum y;
  y.heating = 100;
  y.cooling = 50;
  y.coldest = -8;
  y.warmest = 50;
  y.coldest_hour = 33 * 24 + 6;
  y.warmest_hour = 200 * 24;
  y.backup = 50;
  y.unmet_cooling = 20;
  y.hours_wall_frozen = 2000;
  y.hours_outside_table = 900;
  Temperatures t;
  t.simulation.years = {y, y};
  t.simulation.coldest = y.coldest;
  t.simulation.warmest = y.warmest;
  o.temperatures = std::make_shared<const Temperatures>(std::move(t));
  Surroundings around = make_surroundings(p.thermal).value();
  around.load.outdoor_cold = -60;  // the year never gets there
  o.surroundings = std::make_shared<const Surroundings>(std::move(around));
  return {"heat", p, o};
}

Case heat_near_things() {
  Case c = heat();
  c.plan.site.features.push_back(feature(2, FeatureKind::utility, {{0, 41}, {100, 41}}));
  c.plan.site.features.back().utility = UtilityKind::water;
  return c;
}

Case flows() {
  Plan p = crafted::plan();
  Outcome o = solve(p);
  Flow flow = *o.flow;
  flow.design.imbalance = 0.3;
  flow.antifreeze.freezing_point = 0;
  if (flow.coldest_pump) flow.coldest_pump->duty.flow = 0.3 * p.flow.design_flow;
  for (PipeFlow& pipe : flow.coldest.flow.pipes) pipe.reynolds = 900;
  Purge purge = *o.purge;
  purge.together.cart_can = false;
  purge.one_by_one.reset();
  o.flow = std::make_shared<const Flow>(std::move(flow));
  o.purge = std::make_shared<const Purge>(std::move(purge));
  return {"flows", p, o};
}

// ---- prices ----

Case prices() {
  Plan p = sample::half_acre();
  p.wishes.aim = Aim::mix;
  p.pricing.terms.labour = LabourBy::hours;
  p.wishes.prices.digging = 1;
  p.pricing.terms.extras = {{"permit", 1, "each", 200, false}, {"heat pump", 1, "each", 9000, false}};
  p.pricing.running.unit_cost = 9000;
  p.pricing.terms.incentives = {{"utility rebate", IncentiveKind::percent, 0.1, 500}};
  p.pricing.book.date = "2026-03-01";
  PriceRow old{"warning_tape", "", PriceUnit::metre, {}, 0.1, "2020-01-01", ""};
  PriceRow unknown{"tracer_wire", "", PriceUnit::metre, {}, {}, "", ""};
  PriceRow pipe{"pipe " + p.wishes.pipe, "", PriceUnit::metre, {20}, {}, "", ""};
  p.pricing.book.rows = {pipe, unknown, old};
  p.proposal.start = "2026-05-18";
  p.crew.start = "2026-05-25";
  return {"prices", p, solve(p)};
}

// ---- record ----

Case record() {
  Plan p = sample::half_acre();
  p.thermal.years = 2;
  TestRecord& t = p.record.test;
  t.medium = TestMedium::air;
  t.gauge_range = 1e4;
  t.start = "2026-05-14 16:00";
  t.end = "2026-05-14 14:30";
  t.joints_covered = "2026-05-13";
  p.as_built.trenches.resize(1);
  p.as_built.trenches[0].number = 1;
  p.as_built.trenches[0].filled_on = "2026-05-13";
  FillRecord& f = p.record.fill;
  f.when = "2026-05-12";
  f.freezing_point = -1;
  f.put_in = 0.5;
  f.ph = 3;
  f.pressure = 1e3;
  FlushReading r;
  r.when = "2026-05-15";
  r.duration = 60;
  r.water = WaterSeen::dirty;
  r.air = AirSeen::bubbles;
  for (double drop : {1e2, 1e5, 4e6}) {
    r.flow = 2e-4;
    r.pressure_drop = drop;
    p.record.flush.push_back(r);
  }
  r.open = {1, 99};
  p.record.flush.push_back(r);
  return {"record", p, solve(p)};
}

Case record_begun() {
  Plan p = sample::half_acre();
  p.thermal.years = 2;
  p.record.test.start = "2026-05-14 14:00";
  p.record.test.end = "2026-05-14 14:30";
  p.record.test.result = TestResult::failed;
  p.record.test.joints_covered = "2026-05-15";
  p.record.fill.freezing_point = -30;
  p.record.flush.resize(1);
  p.record.flush[0].direction = FlushDirection::reverse;
  return {"record begun", p, solve(p)};
}

}  // namespace

std::vector<Case> cases() {
  return {geometry(),
          loops(1.2, 0.05, CoilPattern::flat_coil),
          loops(0.01, 0.9, CoilPattern::flat_coil),
          loops(0.4, 0.9, CoilPattern::upright_coil),
          loops(0, 0, CoilPattern::four_pipes),
          too_few(),
          nowhere(),
          hidden(),
          digging(),
          steep(),
          heat(),
          heat_near_things(),
          flows(),
          prices(),
          record(),
          record_begun()};
}

Plan built_short() {
  Plan p = sample::half_acre();
  p.thermal.years = 2;
  BuiltTrench short_one;
  short_one.number = 1;
  short_one.length = 12;
  BuiltTrench off;
  off.number = 2;
  off.head = BuiltPoint{{{"A", 1}, {"B", 1}}, true, {}};
  off.end = BuiltPoint{{{"A", 10}, {"Z", 10}}, true, {}};
  off.length = 9;
  BuiltTrench added;
  added.number = 9;
  added.fate = TrenchFate::added;
  p.as_built.trenches = {short_one, off, added};
  p.as_built.run = {BuiltPoint{{{"A", 1}}, true, {}}};
  p.as_built.header = {{{BuiltPoint{{{"A", 1}, {"A", 2}}, true, {}}}}};
  BuiltCrossing met;
  met.feature_id = sample::power;
  met.depth = 0.9;
  BuiltCrossing unknown;
  unknown.name = "9";
  unknown.place = BuiltPoint{{}, true, Point{30, 30}};
  p.as_built.crossings = {met, unknown};
  return p;
}

}  // namespace underlawn::bad
