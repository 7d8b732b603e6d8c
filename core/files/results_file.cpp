// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/results_file.h"

#include "base/units.h"
#include "files/json_points.h"
#include "files/names.h"
#include "plan/assumptions.h"

namespace underlawn {

namespace {

// What is not of a flat coil stands only where there is something else.
void add_pattern(Json& json, const Coil& c) {
  if (c.pattern == CoilPattern::flat_coil) return;
  json["pattern"] = name_of(kCoilPatternNames, c.pattern);
  if (c.pattern == CoilPattern::upright_coil) json["return_on_top"] = c.return_on_top;
  if (c.level_distance > 0) json["level_distance_m"] = c.level_distance;
  if (c.side_distance > 0) json["side_distance_m"] = c.side_distance;
}

Json json_of(const Coil& c) {
  Json json = {{"loop_diameter_m", c.loop_diameter},
               {"pitch_m", c.pitch},
               {"loops", c.loops},
               {"trench_length_m", c.trench_length},
               {"coil_length_m", c.coil_length},
               {"loop_pipe_m", c.loop_pipe},
               {"return_pipe_m", c.return_pipe}};
  add_pattern(json, c);
  return json;
}

Json json_of(const EarthWork& e) {
  return {{"length_m", e.length}, {"bank_m3", e.bank},         {"bedding_m3", e.bedding},
          {"loose_m3", e.loose},  {"backfill_m3", e.backfill}, {"surplus_loose_m3", e.surplus_loose}};
}

Json json_of(const Trench& t) {
  Json json = {{"number", t.number},        {"role", name_of(kTrenchRoleNames, t.role)},
               {"head_m", to_json(t.head)}, {"end_m", to_json(t.end)},
               {"width_m", t.width},        {"depth_m", t.depth},
               {"coil", json_of(t.coil)}};
  if (!t.bends.empty()) json["bends_m"] = to_json(t.bends);
  return json;
}

Json json_of(const Crossing& c) {
  return {{"feature_id", c.feature_id},
          {"conduit", name_of(kConduitNames, c.conduit)},
          {"at_m", to_json(c.at)},
          {"angle_rad", c.angle},
          {"utility_depth_m", c.utility_depth},
          {"trench_depth_m", c.trench_depth},
          {"hand_dig_m", c.hand_dig}};
}

Json json_of(const Polygon& p) {
  return {{"outer_m", to_json(p.outer)}, {"holes_m", to_json(p.holes)}};
}

Json json_of(const RestrictionCost& c) {
  Json json = Json::object();
  if (c.restriction.kind == Restriction::Kind::setback)
    json["edge"] = c.restriction.edge;
  else
    json["feature_id"] = c.restriction.feature_id;
  json["trenches"] = c.trenches;
  return json;
}

Json json_of(const HouseCorner& c) {
  return {{"tag", c.tag}, {"at_m", to_json(c.at)}};
}

Json json_of(const Tie& t) {
  return {{"point", t.point},
          {"at_m", to_json(t.at)},
          {"first", t.first},
          {"second", t.second},
          {"first_distance_m", t.first_distance},
          {"second_distance_m", t.second_distance},
          {"cut_rad", t.cut},
          {"left_of_base", t.left_of_base}};
}

Json json_of(const Finding& f) {
  return {{"key", f.key},
          {"rule", f.rule},
          {"severity", name_of(kSeverityNames, f.severity)},
          {"title", f.title},
          {"measured", f.measured},
          {"required", f.required},
          {"unit", si_symbol(f.quantity)},
          {"advice", f.advice},
          {"source", f.source},
          {"accepted", f.accepted},
          {"reason", f.reason},
          {"places_m", to_json(f.places)}};
}

Json json_of(const Figure& f) {
  return {
      {"key", f.key},       {"label", f.label},   {"value", f.value},       {"unit", si_symbol(f.quantity)},
      {"method", f.method}, {"source", f.source}, {"from", to_json(f.from)}};
}

Json json_of(const Trouble& t) {
  return {{"code", t.code},   {"thing", t.thing},   {"value", t.value},
          {"bound", t.bound}, {"advice", t.advice}, {"message", t.message()}};
}

template <class T>
Json list_of(const std::vector<T>& values) {
  Json list = Json::array();
  for (const T& value : values) list.push_back(json_of(value));
  return list;
}

Json layout_json(const Layout& layout) {
  return {{"circuits_wanted", layout.wanted},
          {"circuits_that_fit", layout.fits},
          {"direction_rad", layout.direction},
          {"buildable_area_m2", area(layout.buildable)},
          {"buildable", list_of(layout.buildable)},
          {"routable", list_of(layout.routable)},
          {"trenches", list_of(layout.trenches)},
          {"header", {{"length_m", layout.header.length}, {"legs_m", to_json(layout.header.legs)}}},
          {"run", {{"length_m", layout.run.length}, {"line_m", to_json(layout.run.line)}}},
          {"crossings", list_of(layout.crossings)},
          {"restriction_costs", list_of(layout.costs)},
          {"troubles", list_of(layout.troubles)}};
}

Json dig_json(const DigPlan& dig) {
  return {{"slope_h_per_v", dig.slope},
          {"top_width_sloped_m", dig.top_width_sloped},
          {"spoil_width_m", dig.spoil_width},
          {"spoil_height_m", dig.spoil_height},
          {"coil_slope_h_per_v", dig.coil_slope},
          {"run_slope_h_per_v", dig.run_slope},
          {"trenches", list_of(dig.trenches)},
          {"header", json_of(dig.header)},
          {"run", json_of(dig.run)},
          {"total", json_of(dig.total)}};
}

// Every figure under its key with the unit in it, for who wants the numbers only.
Json values_json(const Figures& figures) {
  Json values = Json::object();
  for (const Figure& f : figures.all()) values[key_with_unit(f)] = f.value;
  return values;
}

}  // namespace

std::string results_to_text(const Plan& plan, const Outcome& outcome) {
  return json_to_text(
      {{"format_version", kResultsFormat},
       {"project", plan.title.project},
       {"fingerprint", outcome.fingerprint},
       {"unaccepted_errors_remain", has_unaccepted_errors(outcome)},
       {"troubles", list_of(outcome.troubles)},
       {"findings", list_of(outcome.findings)},
       {"assumptions", assumptions(plan, outcome)},
       {"coil", json_of(outcome.coil)},
       {"layout", layout_json(outcome.layout)},
       {"dig", dig_json(outcome.dig)},
       {"stake_out",
        {{"house_corners", list_of(outcome.stake_out.corners)}, {"ties", list_of(outcome.stake_out.ties)}}},
       {"values", values_json(outcome.figures)},
       {"figures", list_of(outcome.figures.all())}});
}

}  // namespace underlawn
