// SPDX-License-Identifier: GPL-3.0-or-later
// The keys of a plan file, in their order, once: the writer and the reader both walk these functions.
// A visitor has
//   key(name, value)            a number, text, point, points, or a number that may be missing
//   choice(name, value, names)  one of the names
//   key_if(applies, ...), choice_if(applies, ...)  what is written, and expected, only where it applies
//   part(name, value)           an object with keys of its own, or one that may be missing
//   part_if(applies, ...)       what is written, and expected, only where it applies
//   list(name, values), list_if(applies, ...)  an array of such objects
#pragma once

#include "field/straight.h"
#include "files/names.h"
#include "files/record_keys.h"
#include "plan/plan.h"

namespace underlawn {

template <class V>
void walk_keys(V& v, TitleBlock& t) {
  v.key("project", t.project);
  v.key("address", t.address);
  v.key("owner", t.owner);
  v.key("designer", t.designer);
  v.key("phone", t.phone);
  v.key("note", t.note);
}

template <class V>
void walk_keys(V& v, LotCorner& c) {
  v.key("at_m", c.at);
  v.key("setback_m", c.setback);
}

// What does not apply to a feature's kind is written all the same where it is not the usual value: nothing is
// lost when a feature changes its kind and back.
template <class V>
void walk_keys(V& v, Feature& f) {
  const Feature usual;
  v.key("id", f.id);
  v.choice("kind", f.kind, kFeatureKindNames);
  v.key("name", f.name);
  v.key("points_m", f.points);
  v.key("trench_clearance_m", f.trench_clearance);
  v.key("run_clearance_m", f.run_clearance);
  const bool tree = f.kind == FeatureKind::tree;
  const bool utility = f.kind == FeatureKind::utility;
  v.key_if(tree || f.trunk_diameter != usual.trunk_diameter, "trunk_diameter_m", f.trunk_diameter);
  v.choice_if(utility || f.utility != usual.utility, "utility", f.utility, kUtilityKindNames);
  v.key_if(utility || f.depth != usual.depth, "depth_m", f.depth);
  v.key_if(can_be_crossed(f.kind) || f.may_cross != usual.may_cross, "may_cross", f.may_cross);
  v.key_if(!f.note.empty(), "note", f.note);
}

template <class V>
void walk_keys(V& v, EntryPoint& e) {
  v.key("house_id", e.house_id);
  v.key("at_m", e.at);
}

template <class V>
void walk_keys(V& v, ClearanceRule& r) {
  v.choice("kind", r.kind, kFeatureKindNames);
  v.key("trench_m", r.trench);
  v.key("run_m", r.run);
}

template <class V>
void walk_keys(V& v, SpotHeight& h) {
  v.key("at_m", h.at);
  v.key("height_m", h.height);
}

template <class V>
void walk_keys(V& v, Site& s) {
  v.key("north_rad", s.north);
  v.key("root_zone_factor", s.root_zone_factor);
  v.list("lot", s.lot);
  v.list("features", s.features);
  v.part("entry", s.entry);
  v.list("rules", s.rules);
  v.list_if(!s.heights.empty(), "heights", s.heights);
}

template <class V>
void walk_keys(V& v, Deed& d) {
  v.key("text", d.text);
  v.key("start_m", d.start);
  v.key("turn_rad", d.turn);
  v.choice("closure", d.closure, kClosureChoiceNames);
  v.key("chord_tolerance_m", d.chord_tolerance);
}

// As of a feature: what a method does not use is written only where it is not the usual value.
template <class V>
void walk_keys(V& v, Sighting& s) {
  const Sighting usual;
  v.key("name", s.name);
  v.choice("method", s.method, kSightingMethodNames);
  const SightingMethod by = s.method;
  const bool earth = by == SightingMethod::latitude_longitude, grid = by == SightingMethod::east_north;
  const bool aimed = by == SightingMethod::bearing_distance, taped = !earth && !grid;
  const bool two = taped && !aimed;
  v.key_if(taped || !s.from.empty(), "from", s.from);
  v.key_if(two || !s.to.empty(), "to", s.to);
  v.key_if(taped || s.first != usual.first, "first_m", s.first);
  v.key_if(two || s.second != usual.second, "second_m", s.second);
  v.key_if(by == SightingMethod::two_distances || s.left, "left", s.left);
  v.key_if(aimed || s.bearing != usual.bearing, "bearing_rad", s.bearing);
  v.key_if(earth || s.latitude != usual.latitude, "latitude_deg", s.latitude);
  v.key_if(earth || s.longitude != usual.longitude, "longitude_deg", s.longitude);
  v.key_if(grid || s.east != usual.east, "east_m", s.east);
  v.key_if(grid || s.north != usual.north, "north_m", s.north);
  v.key("height_m", s.height);
  v.key_if(!s.note.empty(), "note", s.note);
}

template <class V>
void walk_keys(V& v, GridTie& t) {
  v.key("east_m", t.east);
  v.key("north_m", t.north);
  v.key("at_m", t.at);
}

template <class V>
void walk_keys(V& v, Survey& s) {
  v.part_if(s.deed != Deed{}, "deed", s.deed);
  v.list_if(!s.notebook.empty(), "notebook", s.notebook);
  v.part("grid", s.grid);
}

template <class V>
void walk_keys(V& v, Ground& g) {
  v.choice("soil", g.soil, kSoilTypeNames);
  v.key("swell_ratio", g.swell);
  v.key("shrinkage_ratio", g.shrinkage);
  v.key("repose_rad", g.repose);
  v.key("frost_depth_m", g.frost_depth);
}

template <class V>
void walk_keys(V& v, GivenTrench& t) {
  const GivenTrench usual;
  v.key("head_m", t.head);
  v.key("end_m", t.end);
  v.key_if(!t.bends.empty(), "bends_m", t.bends);
  v.key_if(t.depth != usual.depth, "depth_m", t.depth);
  v.key_if(t.coil_length != usual.coil_length, "coil_length_m", t.coil_length);
}

template <class V>
void walk_keys(V& v, Prices& p) {
  v.key("currency", p.currency);
  v.key("digging_per_m3", p.digging);
  v.key("hand_crossing_each", p.hand_crossing);
  v.key("pavement_per_m2", p.pavement);
  v.key("lawn_per_m2", p.lawn);
  v.key("bedding_per_m3", p.bedding);
  v.key("coil_pipe_per_m", p.coil_pipe);
  v.key("header_pipe_per_m", p.header_pipe);
  v.key("joint_each", p.joint);
  v.key("crew_day_each", p.crew_day);
  v.key("missing_circuit_each", p.missing_circuit);
  v.key("near_tree_per_m", p.near_tree);
  v.key("tree_distance_m", p.tree_distance);
}

template <class V>
void walk_keys(V& v, ClosedSide& s) {
  v.key("house_id", s.house_id);
  v.key("wall", s.wall);
}

template <class V>
void walk_keys(V& v, Segment& s) {
  v.key("head_m", s.a);
  v.key("end_m", s.b);
}

template <class V>
void walk_keys(V& v, GroupHeader& h) {
  v.key("group", h.group);
  v.key("head_m", h.on.a);
  v.key("end_m", h.on.b);
}

template <class V>
void walk_keys(V& v, Wishes& w) {
  v.choice("pattern", w.pattern, kCoilPatternNames);
  v.key("pipe", w.pipe);
  v.key("header_pipe", w.header_pipe);
  v.choice("unknown", w.unknown, kCoilUnknownNames);
  v.key("pitch_m", w.pitch);
  v.key("coil_length_m", w.coil_length);
  v.key("trench_length_m", w.trench_length);
  v.key("loop_diameter_m", w.loop_diameter);
  v.key("circuits", w.circuits);
  v.key("trench_width_m", w.trench_width);
  v.key("trench_depth_m", w.trench_depth);
  v.key("spacing_m", w.spacing);
  v.key("end_gap_m", w.end_gap);
  v.key("run_width_m", w.run_width);
  v.key("run_depth_m", w.run_depth);
  v.key("bedding_m", w.bedding);
  v.key("coil_in_run", w.coil_in_run);
  const Wishes usual;
  const int levels = pipe_levels(w.pattern), sides = pipe_sides(w.pattern);
  v.key_if(levels > 1 || w.level_distance != usual.level_distance, "level_distance_m", w.level_distance);
  v.key_if(sides > 1 || w.side_distance != usual.side_distance, "side_distance_m", w.side_distance);
  const bool standing = w.pattern == CoilPattern::upright_coil;
  v.key_if(standing || w.return_on_top != usual.return_on_top, "return_on_top", w.return_on_top);
  v.list_if(!w.given.empty(), "given", w.given);
  v.choice("aim", w.aim, kAimNames);
  v.part("prices", w.prices);
  v.key("least_length_m", w.least_length);
  v.key("most_length_m", w.most_length);
  v.key("direction_rad", w.direction);
  v.key("groups", w.groups);
  v.list_if(!w.locked.empty(), "locked", w.locked);
  v.part("header_on", w.header_on);
  v.list_if(!w.group_headers.empty(), "group_headers", w.group_headers);
  v.key_if(!w.run_by.empty(), "run_by_m", w.run_by);
  v.list_if(!w.closed.empty(), "closed", w.closed);
  v.key_if(w.level_floor, "level_floor", w.level_floor);
  v.list_if(!w.kept.empty(), "kept", w.kept);
  v.key_if(!w.kept_run.empty(), "kept_run_m", w.kept_run);
}

template <class V>
void walk_keys(V& v, SoilThermal& s) {
  v.key("conductivity_w_mk", s.conductivity);
  v.key("heat_capacity_j_m3k", s.heat_capacity);
}

template <class V>
void walk_keys(V& v, SoilMatter& s) {
  v.key("porosity_ratio", s.porosity);
  v.key("quartz_ratio", s.quartz);
  v.key("saturation_ratio", s.saturation);
  v.choice("grain", s.grain, kGrainNames);
}

template <class V>
void walk_keys(V& v, SoilWishes& s) {
  v.choice("source", s.source, kSoilSourceNames);
  v.part("typed", s.typed);
  v.part("matter", s.matter);
  v.choice("model", s.model, kConductivityModelNames);
}

template <class V>
void walk_keys(V& v, GroundClimate& c) {
  v.key("mean_c", c.mean);
  v.key("amplitude_k", c.amplitude);
  v.key("coldest_day", c.coldest_day);
}

template <class V>
void walk_keys(V& v, MonthlyNormals& n) {
  v.key("name", n.name);
  v.key("mean_c", n.mean);
  v.key("daily_range_k", n.daily_range);
}

template <class V>
void walk_keys(V& v, WeatherYear& w) {
  v.key("name", w.name);
  v.key("outdoor_c", w.outdoor);
}

template <class V>
void walk_keys(V& v, DesignLoad& l) {
  v.key("heat_loss_w", l.heat_loss);
  v.key("outdoor_cold_c", l.outdoor_cold);
  v.key("balance_heating_c", l.balance_heating);
  v.key("heat_gain_w", l.heat_gain);
  v.key("outdoor_warm_c", l.outdoor_warm);
  v.key("balance_cooling_c", l.balance_cooling);
}

template <class V>
void walk_keys(V& v, Surface& s) {
  v.key("name", s.name);
  v.key("area_m2", s.area);
  v.key("u_value_w_m2k", s.u_value);
}

template <class V>
void walk_keys(V& v, BlockHouse& b) {
  v.list("surfaces", b.surfaces);
  v.key("volume_m3", b.volume);
  v.key("floor_area_m2", b.floor_area);
  v.key("ceiling_height_m", b.ceiling_height);
  v.key("air_change_per_h", b.air_change);
  v.key("gains_w", b.gains);
  v.key("cooled", b.cooled);
  v.key("solar_gains_w", b.solar_gains);
  v.key("moisture_gains_w", b.moisture_gains);
  v.key("indoor_heating_c", b.indoor_heating);
  v.key("indoor_cooling_c", b.indoor_cooling);
  v.key("outdoor_cold_c", b.outdoor_cold);
  v.key("outdoor_warm_c", b.outdoor_warm);
}

template <class V>
void walk_keys(V& v, HourlyFile& h) {
  v.key("name", h.name);
  v.key("heating_w", h.heating);
  v.key("cooling_w", h.cooling);
  v.key("ground_w", h.ground);
}

template <class V>
void walk_keys(V& v, PerformancePoint& p) {
  v.key("entering_c", p.entering);
  v.key("capacity_w", p.capacity);
  v.key("power_w", p.power);
}

template <class V>
void walk_keys(V& v, HeatPump& h) {
  v.key("name", h.name);
  v.list("heating", h.heating);
  v.list("cooling", h.cooling);
}

template <class V>
void walk_keys(V& v, ThermalWishes& t) {
  v.part("soil", t.soil);
  v.choice("climate_source", t.climate_source, kClimateSourceNames);
  v.part("climate", t.climate);
  v.key("surface_resistance_m2k_w", t.surface_resistance);
  v.choice("weather_source", t.weather_source, kWeatherSourceNames);
  v.part("normals", t.normals);
  v.part_if(!t.weather_file.outdoor.empty(), "weather_file", t.weather_file);
  v.choice("load_source", t.load_source, kLoadSourceNames);
  v.part("load", t.load);
  v.part("block", t.block);
  v.part_if(t.hours != HourlyFile{}, "hours", t.hours);
  v.part("unit", t.unit);
  v.key("fluid_resistance_mk_w", t.fluid_resistance);
  v.key("coldest_allowed_c", t.coldest_allowed);
  v.key("warmest_allowed_c", t.warmest_allowed);
  v.key("years", t.years);
}

template <class V>
void walk_keys(V& v, FittedLoss& l) {
  v.key("head_m", l.head);
  v.key("flow_m3_s", l.flow);
}

template <class V>
void walk_keys(V& v, CurvePoint& p) {
  v.key("flow_m3_s", p.flow);
  v.key("head_m", p.head);
  v.key("power_w", p.power);
}

template <class V>
void walk_keys(V& v, Circulator& c) {
  v.key("name", c.name);
  v.list("curve", c.curve);
}

template <class V>
void walk_keys(V& v, FlowWishes& f) {
  v.choice("fluid", f.fluid, kFluidNames);
  v.key("mass_fraction_ratio", f.mass_fraction);
  v.key("freeze_margin_k", f.freeze_margin);
  v.key("design_flow_m3_s", f.design_flow);
  v.key("capacity_w", f.capacity);
  v.key("design_temperature_c", f.design_temperature);
  v.key("coldest_temperature_c", f.coldest_temperature);
  v.choice("arrangement", f.arrangement, kHeaderArrangementNames);
  v.key("step_down", f.step_down);
  v.key("header_sizes", f.header_sizes);
  v.key("run_size", f.run_size);
  v.key("tail_m", f.tail);
  v.part("heat_pump", f.heat_pump);
  v.part("hose_kit", f.hose_kit);
  v.key("valves_k", f.valves_k);
  v.part("circulator", f.circulator);
  v.part("flush_cart", f.flush_cart);
  v.key("purge_velocity_m_s", f.purge_velocity);
  v.key("purge_volumes", f.purge_volumes);
  v.key("most_imbalance_ratio", f.most_imbalance);
  v.key("most_head_m", f.most_head);
}

template <class V>
void walk_keys(V& v, PressureReading& r) {
  v.key("time_s", r.time);
  v.key("pressure_pa", r.pressure);
  v.key("temperature_c", r.temperature);
}

template <class V>
void walk_keys(V& v, LoopTest& t) {
  v.choice("procedure", t.procedure, kTestProcedureNames);
  v.key("working_pressure_pa", t.working_pressure);
  v.key("gauge_height_m", t.gauge_height);
  v.key("temperature_c", t.temperature);
  v.key("weakest_fitting_pa", t.weakest_fitting);
  v.key("fitting_name", t.fitting_name);
  v.key("pumped_m3", t.pumped);
  v.list("readings", t.readings);
}

template <class V>
void walk_keys(V& v, Machine& m) {
  v.key("name", m.name);
  v.key("bucket_m3", m.bucket);
  v.key("fill_ratio", m.fill);
  v.key("cycle_s", m.cycle);
  v.key("efficiency_ratio", m.efficiency);
  v.key("width_m", m.width);
  v.key("reach_m", m.reach);
  v.key("depth_m", m.depth);
}

template <class V>
void walk_keys(V& v, DigWishes& d) {
  v.choice("coil_sides", d.coil_sides, kSidesNames);
  v.choice("run_sides", d.run_sides, kSidesNames);
  v.key("slope_h_per_v", d.slope);
  v.key("spoil_off_m", d.spoil_off);
  v.choice("haul", d.haul, kHaulNames);
  v.key("access_m", d.access);
  v.key("laydown_m", d.laydown);
  v.part("excavator", d.excavator);
}

template <class V>
void walk_keys(V& v, CrewWishes& c) {
  v.key("start", c.start);
  v.key("begins_s", c.begins);
  v.key("day_length_s", c.day_length);
  v.key("weekdays", c.weekdays);
  v.key("rain_slack_ratio", c.rain_slack);
  v.key("excavators", c.excavators);
  v.key("racks", c.racks);
  v.key("coils_ready", c.coils_ready);
  v.key("laying_crews", c.laying_crews);
  v.key("joiners", c.joiners);
  v.key_if(c.trucks != CrewWishes{}.trucks, "trucks", c.trucks);
  v.key_if(c.truck_load != CrewWishes{}.truck_load, "truck_load_m3", c.truck_load);
  v.key_if(c.truck_trip != CrewWishes{}.truck_trip, "truck_trip_s", c.truck_trip);
  v.part("loader", c.loader);
  v.key("trencher_s_m", c.trencher);
  v.key("hand_crossing_s", c.hand_crossing);
  v.key("coil_making_s_m", c.coil_making);
  v.key("straight_making_s_m", c.straight_making);
  v.key("coil_laying_s_m", c.coil_laying);
  v.key("header_laying_s_m", c.header_laying);
  v.key("joint_making_s", c.joint_making);
  v.key("test_filling_s", c.test_filling);
}

template <class V>
void walk_keys(V& v, Acceptance& a) {
  v.key("finding", a.finding);
  v.key("reason", a.reason);
}

template <class V>
void walk_keys(V& v, ProposalWords& w) {
  v.key_if(!w.opening.empty(), "opening", w.opening);
  v.key_if(!w.start.empty(), "start", w.start);
  v.key_if(!w.guarantee.empty(), "guarantee", w.guarantee);
  v.key_if(!w.payment.empty(), "payment", w.payment);
  v.key_if(!w.validity.empty(), "validity", w.validity);
}

template <class V>
void walk_keys(V& v, Dimension& d) {
  v.key("from_m", d.from);
  v.key("to_m", d.to);
  v.choice_if(d.way != DimensionWay::straight, "way", d.way, kDimensionWayNames);
  v.key("offset_m", d.offset);
  v.key_if(!d.text.empty(), "text", d.text);
}

template <class V>
void walk_keys(V& v, Picture& p) {
  const Picture usual;
  v.key("name", p.name);
  v.key_if(!p.file.empty(), "file", p.file);
  v.key_if(p.page != usual.page, "page", p.page);
  v.key("at_m", p.at);
  v.key("width_m", p.width);
  v.key("height_m", p.height);
  v.key("turn_rad", p.turn);
  v.key("strength_ratio", p.strength);
  v.key("locked", p.locked);
  v.key("hidden", p.hidden);
  v.key("on_sheets", p.on_sheets);
  v.key_if(!p.data.empty(), "data_base64", p.data);
}

template <class V>
void walk_keys(V& v, MapPlace& m) {
  v.key("latitude_deg", m.latitude);
  v.key("longitude_deg", m.longitude);
  v.key("at_m", m.at);
}

template <class V>
void walk_keys(V& v, PriceRow& r) {
  v.key("key", r.key);
  v.key_if(!r.item.empty(), "item", r.item);
  v.choice("unit", r.unit, kPriceUnitNames);
  v.key_if(!r.packs.empty(), "packs", r.packs);
  v.key_if(!r.pack_prices.empty(), "pack_prices", r.pack_prices);
  v.key("price", r.price);
  v.key_if(!r.date.empty(), "date", r.date);
  v.key_if(!r.note.empty(), "note", r.note);
}

template <class V>
void walk_keys(V& v, PriceBook& b) {
  const PriceBook usual;
  v.key_if(!b.name.empty(), "name", b.name);
  v.key_if(!b.date.empty(), "date", b.date);
  v.key_if(b.oldest != usual.oldest, "oldest_days", b.oldest);
  v.list_if(!b.rows.empty(), "rows", b.rows);
}

template <class V>
void walk_keys(V& v, Counting& c) {
  const Counting usual;
  v.key_if(c.ties_per_loop != usual.ties_per_loop, "ties_per_loop", c.ties_per_loop);
  v.key_if(c.tie_distance != usual.tie_distance, "tie_distance_m", c.tie_distance);
  v.key_if(c.tape_lines != usual.tape_lines, "tape_lines", c.tape_lines);
  v.key_if(c.tracer != usual.tracer, "tracer", c.tracer);
  v.key_if(c.seed != usual.seed, "seed_kg_m2", c.seed);
  v.key_if(c.straw != usual.straw, "straw_m2_each", c.straw);
  v.key_if(c.insulated != usual.insulated, "insulated_m", c.insulated);
  v.key_if(c.sleeve != usual.sleeve, "sleeve_m", c.sleeve);
  v.key_if(c.grout != usual.grout, "grout_bags", c.grout);
  v.key_if(c.pipe_spare != usual.pipe_spare, "pipe_spare_ratio", c.pipe_spare);
  v.key_if(c.fitting_spare != usual.fitting_spare, "fitting_spare_ratio", c.fitting_spare);
  v.key_if(c.antifreeze_spare != usual.antifreeze_spare, "antifreeze_spare_ratio", c.antifreeze_spare);
}

template <class V>
void walk_keys(V& v, ExtraLine& e) {
  const ExtraLine usual;
  v.key("item", e.item);
  v.key("amount", e.amount);
  v.key_if(!e.unit.empty(), "unit", e.unit);
  v.key("price", e.price);
  v.key_if(e.material != usual.material, "material", e.material);
}

template <class V>
void walk_keys(V& v, Incentive& i) {
  v.key("name", i.name);
  v.choice("kind", i.kind, kIncentiveKindNames);
  v.key("amount", i.amount);
  v.key("cap", i.cap);
}

template <class V>
void walk_keys(V& v, OfferTerms& t) {
  const OfferTerms usual;
  v.choice_if(t.labour != usual.labour, "labour", t.labour, kLabourByNames);
  v.key_if(t.overhead != usual.overhead, "overhead_ratio", t.overhead);
  v.key_if(t.markup != usual.markup, "markup_ratio", t.markup);
  v.key_if(t.tax != usual.tax, "tax_ratio", t.tax);
  v.choice_if(t.tax_on != usual.tax_on, "tax_on", t.tax_on, kTaxOnNames);
  v.list_if(!t.extras.empty(), "extras", t.extras);
  v.list_if(!t.incentives.empty(), "incentives", t.incentives);
}

template <class V>
void walk_keys(V& v, OtherSystem& o) {
  v.key("name", o.name);
  v.key("fuel", o.fuel);
  v.key("unit", o.unit);
  v.key("heat_content_j", o.heat_content);
  v.key("price", o.price);
  v.key("escalation_ratio", o.escalation);
  v.key("efficiency", o.efficiency);
  v.key("emission_kg", o.emission);
  v.key("cooling", o.cooling);
  v.key("auxiliary_ratio", o.auxiliary);
  v.key("first_cost", o.first_cost);
  v.key("maintenance", o.maintenance);
  v.key("life_years", o.life);
}

template <class V>
void walk_keys(V& v, Running& r) {
  const Running usual;
  v.key_if(r.electricity != usual.electricity, "electricity_per_kwh", r.electricity);
  v.key_if(r.electricity_escalation != usual.electricity_escalation, "electricity_escalation_ratio",
           r.electricity_escalation);
  v.key_if(r.electricity_emission != usual.electricity_emission, "electricity_emission_kg_kwh",
           r.electricity_emission);
  v.key_if(r.discount != usual.discount, "discount_ratio", r.discount);
  v.key_if(r.inflation != usual.inflation, "inflation_ratio", r.inflation);
  v.key("years", r.years);
  v.key_if(r.unit_cost != usual.unit_cost, "unit_cost", r.unit_cost);
  v.key_if(r.maintenance != usual.maintenance, "maintenance", r.maintenance);
  v.key_if(r.unit_life != usual.unit_life, "unit_life_years", r.unit_life);
  v.list_if(!r.others.empty(), "others", r.others);
}

template <class V>
void walk_keys(V& v, Pricing& p) {
  v.part_if(p.book != PriceBook{}, "book", p.book);
  v.part_if(p.counting != Counting{}, "counting", p.counting);
  v.part_if(p.terms != OfferTerms{}, "terms", p.terms);
  v.part_if(p.running != Running{}, "running", p.running);
}

template <class V>
void walk_keys(V& v, SheetWishes& s) {
  const SheetWishes usual;
  v.key("scale", s.scale);
  v.key_if(!s.language.empty(), "language", s.language);
  v.choice_if(s.units != usual.units, "units", s.units, kSheetUnitsNames);
  v.key_if(s.page_a_trench, "page_a_trench", s.page_a_trench);
}

template <class V>
void walk_keys(V& v, Plan& p) {
  v.choice("units", p.units, kUnitSystemNames);
  v.part("title", p.title);
  v.part("site", p.site);
  v.part_if(p.survey != Survey{}, "survey", p.survey);
  v.part("ground", p.ground);
  v.part("wishes", p.wishes);
  v.part("thermal", p.thermal);
  v.part("flow", p.flow);
  v.part("test", p.test);
  v.part_if(p.proposal != ProposalWords{}, "proposal", p.proposal);
  v.part_if(p.pricing != Pricing{}, "pricing", p.pricing);
  v.part_if(p.sheets != SheetWishes{}, "sheets", p.sheets);
  v.part_if(p.record != JobRecord{}, "record", p.record);
  v.part_if(p.as_built != AsBuilt{}, "as_built", p.as_built);
  v.part_if(p.dig != DigWishes{}, "dig", p.dig);
  v.part_if(p.crew != CrewWishes{}, "crew", p.crew);
  v.list("accepted", p.accepted);
  v.list_if(!p.dimensions.empty(), "dimensions", p.dimensions);
  v.list_if(!p.pictures.empty(), "pictures", p.pictures);
  v.part("map_place", p.map_place);
}

}  // namespace underlawn
