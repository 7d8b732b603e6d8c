// SPDX-License-Identifier: GPL-3.0-or-later
// Keys of what was recorded on the job, for plan_keys.h. What was not written down has no key.
#pragma once

#include "files/names.h"
#include "plan/record/as_built.h"
#include "plan/record/job_record.h"

namespace underlawn {

inline constexpr Names<TestResult, 3> kTestResultNames = {{
    {TestResult::not_said, "not_said"},
    {TestResult::passed, "passed"},
    {TestResult::failed, "failed"},
}};
inline constexpr Names<TestMedium, 2> kTestMediumNames = {
    {{TestMedium::water, "water"}, {TestMedium::air, "air"}}};
inline constexpr Names<FlushDirection, 2> kFlushDirectionNames = {
    {{FlushDirection::forward, "forward"}, {FlushDirection::reverse, "reverse"}}};
inline constexpr Names<WaterSeen, 4> kWaterSeenNames = {{
    {WaterSeen::not_noted, "not_noted"},
    {WaterSeen::clear, "clear"},
    {WaterSeen::cloudy, "cloudy"},
    {WaterSeen::dirty, "dirty"},
}};
inline constexpr Names<AirSeen, 4> kAirSeenNames = {{
    {AirSeen::not_noted, "not_noted"},
    {AirSeen::none, "none"},
    {AirSeen::bubbles, "bubbles"},
    {AirSeen::slugs, "slugs"},
}};
inline constexpr Names<TrenchFate, 3> kTrenchFateNames = {{
    {TrenchFate::dug, "dug"},
    {TrenchFate::left_out, "left_out"},
    {TrenchFate::added, "added"},
}};
inline constexpr Names<StopCause, 7> kStopCauseNames = {{
    {StopCause::none, "none"},
    {StopCause::rock, "rock"},
    {StopCause::water, "water"},
    {StopCause::roots, "roots"},
    {StopCause::utility, "utility"},
    {StopCause::caving, "caving"},
    {StopCause::other, "other"},
}};

template <class V>
void text_key(V& v, const char* name, std::string& text) {
  v.key_if(!text.empty(), name, text);
}

template <class V>
void walk_keys(V& v, TestRecord& t) {
  text_key(v, "start", t.start);
  text_key(v, "end", t.end);
  text_key(v, "part", t.part);
  v.choice_if(t.medium != TestMedium::water, "medium", t.medium, kTestMediumNames);
  v.choice_if(t.result != TestResult::not_said, "result", t.result, kTestResultNames);
  text_key(v, "tester", t.tester);
  text_key(v, "witness", t.witness);
  text_key(v, "gauge", t.gauge);
  text_key(v, "gauge_checked", t.gauge_checked);
  v.key("gauge_range_pa", t.gauge_range);
  text_key(v, "weather", t.weather);
  v.key("air_temperature_c", t.air_temperature);
  text_key(v, "joints_covered", t.joints_covered);
  v.key("pressure_while_filling_pa", t.pressure_while_filling);
  text_key(v, "note", t.note);
}

template <class V>
void walk_keys(V& v, FlushReading& f) {
  v.key_if(!f.open.empty(), "open", f.open);
  v.choice("direction", f.direction, kFlushDirectionNames);
  text_key(v, "when", f.when);
  v.key("duration_s", f.duration);
  v.key("flow_m3_s", f.flow);
  v.key("pressure_drop_pa", f.pressure_drop);
  v.key("temperature_c", f.temperature);
  v.choice_if(f.water != WaterSeen::not_noted, "water", f.water, kWaterSeenNames);
  v.key("turbidity_ntu", f.turbidity);
  v.choice_if(f.air != AirSeen::not_noted, "air", f.air, kAirSeenNames);
  text_key(v, "note", f.note);
}

template <class V>
void walk_keys(V& v, FillRecord& f) {
  text_key(v, "when", f.when);
  text_key(v, "filled_by", f.filled_by);
  text_key(v, "product", f.product);
  text_key(v, "batch", f.batch);
  v.key("strength_ratio", f.strength);
  v.key("put_in_m3", f.put_in);
  v.key("freezing_point_c", f.freezing_point);
  text_key(v, "refractometer", f.refractometer);
  v.key("ph", f.ph);
  text_key(v, "inhibitor", f.inhibitor);
  text_key(v, "water", f.water);
  v.key("temperature_c", f.temperature);
  v.key("pressure_pa", f.pressure);
  v.key_if(f.labelled, "labelled", f.labelled);
  text_key(v, "note", f.note);
}

template <class V>
void walk_keys(V& v, Signature& s) {
  v.key("role", s.role);
  text_key(v, "name", s.name);
  text_key(v, "licence", s.licence);
  text_key(v, "date", s.date);
}

template <class V>
void walk_keys(V& v, JobRecord& r) {
  text_key(v, "permit", r.permit);
  text_key(v, "locate_ticket", r.locate_ticket);
  v.part_if(r.test != TestRecord{}, "test", r.test);
  v.list_if(!r.flush.empty(), "flush", r.flush);
  v.part_if(r.fill != FillRecord{}, "fill", r.fill);
  v.list_if(!r.signatures.empty(), "signatures", r.signatures);
  text_key(v, "note", r.note);
}

template <class V>
void walk_keys(V& v, Tape& t) {
  v.key("corner", t.corner);
  v.key("length_m", t.length);
}

template <class V>
void walk_keys(V& v, BuiltPoint& p) {
  v.list_if(!p.tapes.empty(), "tapes", p.tapes);
  v.key_if(!p.left, "left", p.left);
  v.key("at_m", p.at);
}

template <class V>
void walk_keys(V& v, BuiltTrench& t) {
  v.key("number", t.number);
  v.choice_if(t.fate != TrenchFate::dug, "fate", t.fate, kTrenchFateNames);
  v.part("head", t.head);
  v.part("end", t.end);
  v.list_if(!t.bends.empty(), "bends", t.bends);
  v.key("length_m", t.length);
  v.choice_if(t.stopped_by != StopCause::none, "stopped_by", t.stopped_by, kStopCauseNames);
  v.key("depth_m", t.depth);
  v.key("end_depth_m", t.end_depth);
  v.key("pipe_m", t.pipe);
  v.key("pitch_m", t.pitch);
  text_key(v, "dug_on", t.dug_on);
  text_key(v, "filled_on", t.filled_on);
  text_key(v, "note", t.note);
}

template <class V>
void walk_keys(V& v, BuiltLine& l) {
  v.list_if(!l.points.empty(), "points", l.points);
  v.key("depth_m", l.depth);
}

template <class V>
void walk_keys(V& v, BuiltCrossing& c) {
  v.key("feature_id", c.feature_id);
  text_key(v, "name", c.name);
  v.choice_if(c.feature_id == 0, "utility", c.utility, kUtilityKindNames);
  v.part("place", c.place);
  v.key("depth_m", c.depth);
  v.key("pipe_depth_m", c.pipe_depth);
  text_key(v, "note", c.note);
}

template <class V>
void walk_keys(V& v, Photo& p) {
  v.key("file", p.file);
  text_key(v, "caption", p.caption);
  v.key_if(p.trench != 0, "trench", p.trench);
  text_key(v, "taken", p.taken);
  v.key("at_m", p.at);
}

template <class V>
void walk_keys(V& v, AsBuilt& a) {
  text_key(v, "measured_by", a.measured_by);
  text_key(v, "measured_on", a.measured_on);
  v.list_if(!a.trenches.empty(), "trenches", a.trenches);
  v.list_if(!a.run.empty(), "run", a.run);
  v.list_if(!a.header.empty(), "header", a.header);
  v.key("run_depth_m", a.run_depth);
  v.key("header_depth_m", a.header_depth);
  text_key(v, "run_pipe", a.run_pipe);
  text_key(v, "header_pipe", a.header_pipe);
  v.list_if(!a.crossings.empty(), "crossings", a.crossings);
  v.list_if(!a.photos.empty(), "photos", a.photos);
  text_key(v, "note", a.note);
}

}  // namespace underlawn
