// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/fuels.h"
#include "support/bad_plans.h"
#include "support/crafted.h"

namespace underlawn::bad {

namespace {

void set_all(double value, std::initializer_list<double*> numbers) {
  for (double* n : numbers) *n = value;
}

void spoil_site(Site& s, double v) {
  int id = 1;
  for (FeatureKind kind :
       {FeatureKind::house, FeatureKind::tree, FeatureKind::utility, FeatureKind::utility}) {
    Feature f = crafted::feature(id++, kind, {{v, v}, {v, v}});
    f.trench_clearance = f.run_clearance = v;
    set_all(v, {&f.trunk_diameter, &f.depth});
    s.features.push_back(f);
  }
  s.features.back().points.resize(1);
  s.features.back().id = -1;
  s.features[1].points.clear();
  for (LotCorner& c : s.lot) c.setback = v;
  s.entry = EntryPoint{77, {v, v}};
  s.rules = {{FeatureKind::drain_field, v, v}};
  s.heights = {{{v, v}, v}};
  set_all(v, {&s.north, &s.root_zone_factor});
}

void spoil_wishes(Wishes& w, double v) {
  set_all(v, {&w.pitch, &w.coil_length, &w.trench_length, &w.loop_diameter, &w.trench_width, &w.trench_depth,
              &w.spacing, &w.end_gap, &w.run_width, &w.run_depth, &w.bedding, &w.level_distance,
              &w.side_distance, &w.least_length, &w.most_length});
  Prices& p = w.prices;
  set_all(v, {&p.digging, &p.hand_crossing, &p.pavement, &p.lawn, &p.bedding, &p.coil_pipe, &p.header_pipe,
              &p.joint, &p.crew_day, &p.missing_circuit, &p.near_tree, &p.tree_distance});
  w.direction = v;
  w.circuits = -1;
  w.groups = 99;
  w.pipe = w.header_pipe = "0";
  w.aim = Aim::metres;
  w.header_on = Segment{{v, v}, {v, v}};
  w.group_headers = {{99, {{v, v}, {v, v}}}};
  w.run_by = {{v, v}};
  w.kept = {{{v, v}, {v, v}}};
  w.kept_run = {{v, v}};
}

void spoil_crew(Plan& plan, double v) {
  for (Machine* m : {&plan.dig.excavator, &plan.crew.loader})
    set_all(v, {&m->bucket, &m->fill, &m->cycle, &m->efficiency, &m->width, &m->reach, &m->depth});
  DigWishes& d = plan.dig;
  d.slope = d.spoil_off = v;
  d.access = d.laydown = Point{v, v};
  CrewWishes& c = plan.crew;
  set_all(v, {&c.begins, &c.day_length, &c.rain_slack, &c.trencher, &c.hand_crossing, &c.coil_making,
              &c.straight_making, &c.coil_laying, &c.header_laying, &c.joint_making, &c.test_filling});
  c.excavators = c.racks = c.laying_crews = c.joiners = 0;
  c.coils_ready = -1;
  c.weekdays = "0";
  c.start = "0";
}

void spoil_pricing(Pricing& p, double v) {
  p.book.rows = {{"0", "0", PriceUnit::each, {v}, v, "0", ""},
                 {"0", "0", PriceUnit::each, {v}, v, "0", ""},
                 {"lawn", "0", PriceUnit::each, {}, v, "0", ""}};
  p.book.date = "0";
  p.book.oldest = v;
  Counting& n = p.counting;
  set_all(v, {&n.ties_per_loop, &n.tie_distance, &n.tape_lines, &n.seed, &n.straw, &n.insulated, &n.sleeve,
              &n.grout, &n.pipe_spare, &n.fitting_spare, &n.antifreeze_spare});
  set_all(v, {&p.terms.overhead, &p.terms.markup, &p.terms.tax});
  p.terms.extras = {{"0", v, "", v, false}};
  p.terms.incentives = {{"0", IncentiveKind::percent, v, v}, {"0", IncentiveKind::fixed, v, v}};
  Running& r = p.running;
  set_all(v, {&r.electricity, &r.electricity_escalation, &r.electricity_emission, &r.discount, &r.inflation,
              &r.unit_cost, &r.maintenance});
  r.years = r.unit_life = 0;
  OtherSystem o = usual_systems().front();
  set_all(v, {&o.heat_content, &o.price, &o.escalation, &o.efficiency, &o.emission, &o.cooling, &o.auxiliary,
              &o.first_cost, &o.maintenance});
  o.life = 0;
  r.others = {o};
  o.name.clear();
  r.others.push_back(o);
}

void spoil_record(JobRecord& r, double v) {
  r.test.start = r.test.end = r.test.gauge_checked = r.test.joints_covered = r.fill.when = "0";
  r.test.gauge_range = r.test.air_temperature = r.test.pressure_while_filling = v;
  FlushReading f;
  f.when = "0";
  f.duration = f.flow = f.pressure_drop = f.temperature = f.turbidity = v;
  r.flush = {f};
  r.fill.strength = r.fill.put_in = r.fill.freezing_point = r.fill.ph = v;
  r.fill.temperature = r.fill.pressure = v;
  r.signatures = {{"0", "0", "0", "0"}};
}

void spoil_built(AsBuilt& b, double v) {
  const BuiltPoint point{{{"A", v}}, true, Point{v, v}};
  BuiltTrench t;
  t.number = -1;
  t.head = t.end = point;
  t.bends = {point};
  t.length = t.depth = t.end_depth = t.pipe = t.pitch = v;
  t.dug_on = t.filled_on = b.measured_on = "0";
  b.trenches = {t, t};
  b.run = {point};
  b.header = {{{point}, v}};
  b.run_depth = b.header_depth = v;
  b.run_pipe = b.header_pipe = "0";
  BuiltCrossing c;
  c.place = point;
  c.depth = c.pipe_depth = v;
  b.crossings = {c};
  b.photos = {{"0", "", 0, "0", Point{v, v}}};
}

}  // namespace

Plan out_of_bounds(double value) {
  Plan p = crafted::plan();
  spoil_site(p.site, value);
  spoil_wishes(p.wishes, value);
  set_all(value, {&p.ground.swell, &p.ground.shrinkage, &p.ground.repose, &p.ground.frost_depth});
  spoil_crew(p, value);
  spoil_pricing(p.pricing, value);
  spoil_record(p.record, value);
  spoil_built(p.as_built, value);
  Picture picture;
  picture.at = {value, value};
  set_all(value, {&picture.width, &picture.height, &picture.turn, &picture.strength});
  picture.page = 0;
  p.pictures = {picture};
  return p;
}

}  // namespace underlawn::bad
