// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/as_built_csv.h"

#include <algorithm>
#include <cstdio>

#include "base/csv.h"
#include "base/say.h"

namespace underlawn {

namespace {

class Rows {
 public:
  Rows(const Plan& plan, const Outcome& planned, const AsBuiltAnswer& built)
      : plan_(plan), planned_(planned), built_(built) {}

  std::vector<BuiltRow> all() {
    for (const Trench& t : built_.loop.layout.trenches) add_trench(t);
    for (const Tie& tie : built_.outcome->stake_out.ties)
      if (tie.key.starts_with("header") || tie.key.starts_with("run"))
        rows_.push_back({tie.point, tie.at, std::nullopt, tie, line_depth(tie.at), {}, {}, ""});
    for (const Crossing& c : built_.loop.layout.crossings) add_crossing(c);
    for (const BuiltCrossing& c : plan_.as_built.crossings)
      if (c.feature_id == 0) add_unknown(c);
    return std::move(rows_);
  }

 private:
  // Where run and leg meet the leg's.
  double line_depth(Point at) const {
    const Header& header = built_.loop.layout.header;
    for (std::size_t i = 0; i < header.legs.size(); ++i)
      if (line_distance({at, at}, header.legs[i]) <= kSameStake)
        return depth_of_leg(header, i, plan_.wishes.run_depth);
    return built_.loop.layout.run.depth.value_or(plan_.wishes.run_depth);
  }
  std::optional<Tie> tie_at(Point p) const {
    for (const Tie& tie : built_.outcome->stake_out.ties)
      if (distance(tie.at, p) <= kSameStake) return tie;
    return std::nullopt;
  }
  const Trench* planned_trench(int number) const {
    for (const Trench& t : planned_.layout.trenches)
      if (t.number == number) return &t;
    return nullptr;
  }
  const BuiltTrench* said_of(int number) const {
    for (const BuiltTrench& t : plan_.as_built.trenches)
      if (t.number == number) return &t;
    return nullptr;
  }

  void add_trench(const Trench& t) {
    const Trench* planned = planned_trench(t.number);
    const BuiltTrench* said = said_of(t.number);
    const std::string number = std::to_string(t.number);
    const Polyline line = middle_line(t);
    for (std::size_t i = 0; i < line.size(); ++i) {
      const bool head = i == 0, end = i + 1 == line.size();
      BuiltRow row{head  ? say("{} head", number)
                   : end ? say("{} end", number)
                         : say("{} bend {}", number, i),
                   line[i],
                   {},
                   {},
                   {},
                   {},
                   {},
                   ""};
      if (planned != nullptr && (head || end)) row.planned = head ? planned->head : planned->end;
      row.tie = tie_at(line[i]);
      row.depth = depth_at(t, said, head, end);
      if (end && said != nullptr) row.stopped_by = said->stopped_by;
      if (head) {
        row.pipe = t.coil.coil_length;
        if (t.coil.loops > 0) row.pitch = t.coil.pitch;
        if (said != nullptr) row.note = said->note;
      }
      rows_.push_back(std::move(row));
    }
  }

  static double depth_at(const Trench& t, const BuiltTrench* said, bool head, bool end) {
    if (said == nullptr) return t.depth;
    if (head && said->depth) return *said->depth;
    if (end && said->end_depth) return *said->end_depth;
    return said->depth.value_or(t.depth);
  }

  void add_crossing(const Crossing& c) {
    const Feature* f = find_feature(plan_.site, c.feature_id);
    BuiltRow row{f == nullptr ? say("crossing of a thing") : say("crossing {}", display_name(*f)),
                 c.at,
                 {},
                 {},
                 {},
                 {},
                 {},
                 say("not measured")};
    row.depth = c.utility_depth;
    for (const BuiltCrossing& b : plan_.as_built.crossings)
      if (b.feature_id == c.feature_id && b.depth) {
        row.depth = *b.depth;
        row.note = b.note.empty() ? say("measured") : say("measured: {}", b.note);
      }
    rows_.push_back(std::move(row));
  }

  void add_unknown(const BuiltCrossing& c) {
    if (!c.place) return;
    const auto at = place_of(house_corners(plan_.site), *c.place, say("crossing"), plan_.units);
    if (!at) return;
    rows_.push_back(
        {say("crossing {}", c.name), at->at, {}, {}, c.depth, {}, {}, say("not on the plan; {}", c.note)});
  }

  const Plan& plan_;
  const Outcome& planned_;
  const AsBuiltAnswer& built_;
  std::vector<BuiltRow> rows_;
};

const char* stop_code(StopCause cause) {
  switch (cause) {
    case StopCause::none:
      break;
    case StopCause::rock:
      return "rock";
    case StopCause::water:
      return "water";
    case StopCause::roots:
      return "roots";
    case StopCause::utility:
      return "utility";
    case StopCause::caving:
      return "caving";
    case StopCause::other:
      return "other";
  }
  return "";
}

// A millimetre, as the table of stakes.
std::string number(const std::optional<double>& metres, bool us) {
  if (!metres) return "";
  char out[40];
  std::snprintf(out, sizeof out, "%.3f", us ? *metres / 0.3048 : *metres);
  return std::string(out) == "-0.000" ? "0.000" : out;
}

}  // namespace

std::vector<BuiltRow> built_rows(const Plan& plan, const Outcome& planned, const AsBuiltAnswer& built) {
  return Rows(plan, planned, built).all();
}

std::string as_built_csv(const Plan& plan, const Outcome& planned, const AsBuiltAnswer& built) {
  const bool us = plan.units == UnitSystem::us;
  const std::string unit = us ? " ft" : " m";
  const auto in_unit = [us](const std::optional<double>& metres) { return number(metres, us); };
  std::string out = csv_line({"point", "x" + unit, "y" + unit, "tie 1", "tape 1" + unit, "tie 2",
                              "tape 2" + unit, "planned x" + unit, "planned y" + unit, "moved" + unit,
                              "depth" + unit, "pipe" + unit, "pitch" + unit, "stopped by", "note"});
  for (const BuiltRow& r : built_rows(plan, planned, built)) {
    using Maybe = std::optional<double>;
    out += csv_line({r.point, in_unit(r.at.x), in_unit(r.at.y), r.tie ? r.tie->first : "",
                     in_unit(r.tie ? Maybe(r.tie->first_distance) : Maybe()), r.tie ? r.tie->second : "",
                     in_unit(r.tie ? Maybe(r.tie->second_distance) : Maybe()),
                     in_unit(r.planned ? Maybe(r.planned->x) : Maybe()),
                     in_unit(r.planned ? Maybe(r.planned->y) : Maybe()),
                     in_unit(r.planned ? Maybe(distance(*r.planned, r.at)) : Maybe()), in_unit(r.depth),
                     in_unit(r.pipe), in_unit(r.pitch), stop_code(r.stopped_by), r.note});
  }
  return out;
}

}  // namespace underlawn
