// SPDX-License-Identifier: GPL-3.0-or-later
// The keys of a plan file, in their order, once: the writer and the reader both walk these functions.
// A visitor has
//   key(name, value)            a number, text, point, points, or a number that may be missing
//   choice(name, value, names)  one of the names
//   key_if(applies, ...), choice_if(applies, ...)  what is written, and expected, only where it applies
//   part(name, value)           an object with keys of its own, or one that may be missing
//   list(name, values)          an array of such objects
#pragma once

#include "field/straight.h"
#include "files/names.h"
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
void walk_keys(V& v, Site& s) {
  v.key("north_rad", s.north);
  v.key("root_zone_factor", s.root_zone_factor);
  v.list("lot", s.lot);
  v.list("features", s.features);
  v.part("entry", s.entry);
  v.list("rules", s.rules);
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
}

template <class V>
void walk_keys(V& v, Acceptance& a) {
  v.key("finding", a.finding);
  v.key("reason", a.reason);
}

template <class V>
void walk_keys(V& v, Plan& p) {
  v.choice("units", p.units, kUnitSystemNames);
  v.part("title", p.title);
  v.part("site", p.site);
  v.part("ground", p.ground);
  v.part("wishes", p.wishes);
  v.list("accepted", p.accepted);
}

}  // namespace underlawn
