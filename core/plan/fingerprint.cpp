// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/fingerprint.h"

#include <charconv>

namespace underlawn {

namespace {

class Lines {
 public:
  void add(std::string_view name, double value) {
    char digits[32];
    // Adding nought turns -0 into 0, which is the same place.
    const auto end = std::to_chars(digits, digits + sizeof digits, value + 0.0).ptr;
    add(name, std::string_view(digits, static_cast<std::size_t>(end - digits)));
  }
  void add(std::string_view name, int value) { add(name, std::string_view(std::to_string(value))); }
  void add(std::string_view name, std::string_view value) {
    text_.append(name).append("=").append(value).append("\n");
  }
  void add(std::string_view name, const std::string& value) { add(name, std::string_view(value)); }
  void add(std::string_view name, Point p) {
    add(name, p.x);
    add(name, p.y);
  }
  void add(std::string_view name, const std::optional<double>& value) {
    if (value)
      add(name, *value);
    else
      add(name, std::string_view("-"));
  }
  template <class Enum>
  requires std::is_enum_v<Enum>
  void add(std::string_view name, Enum value) { add(name, static_cast<int>(value)); }
  std::string take() { return std::move(text_); }

 private:
  std::string text_;
};

void add_feature(Lines& lines, const Feature& f) {
  lines.add("feature", f.id);
  lines.add("kind", f.kind);
  for (Point p : f.points) lines.add("point", p);
  lines.add("trench_clearance", f.trench_clearance);
  lines.add("run_clearance", f.run_clearance);
  lines.add("trunk_diameter", f.trunk_diameter);
  lines.add("utility", f.utility);
  lines.add("depth", f.depth);
  lines.add("may_cross", static_cast<int>(f.may_cross));
}

void add_site(Lines& lines, const Site& site) {
  for (const LotCorner& c : site.lot) {
    lines.add("corner", c.at);
    lines.add("setback", c.setback);
  }
  for (const Feature& f : site.features) add_feature(lines, f);
  if (site.entry) {
    lines.add("entry_house", site.entry->house_id);
    lines.add("entry", site.entry->at);
  }
  lines.add("north", site.north);
  lines.add("root_zone_factor", site.root_zone_factor);
  for (const ClearanceRule& r : site.rules) {
    lines.add("rule", r.kind);
    lines.add("trench", r.trench);
    lines.add("run", r.run);
  }
}

void add_ground(Lines& lines, const Ground& ground) {
  lines.add("soil", ground.soil);
  lines.add("swell", ground.swell);
  lines.add("shrinkage", ground.shrinkage);
  lines.add("repose", ground.repose);
  lines.add("frost_depth", ground.frost_depth);
}

void add_given(Lines& lines, const GivenTrench& t) {
  lines.add("head", t.head);
  lines.add("end", t.end);
  lines.add("depth", t.depth);
  lines.add("coil_length", t.coil_length);
  for (Point p : t.bends) lines.add("bend", p);
}

void add_prices(Lines& lines, const Prices& p) {
  for (double each : {p.digging, p.hand_crossing, p.pavement, p.lawn, p.bedding, p.coil_pipe, p.header_pipe,
                      p.joint, p.crew_day, p.missing_circuit, p.near_tree, p.tree_distance})
    lines.add("price", each);
}

// Of no weight where nothing is asked of it: the fingerprints of plans without are on paper already.
void add_arrangement(Lines& lines, const Wishes& w) {
  const Wishes usual;
  if (w.aim != usual.aim) lines.add("aim", w.aim);
  if (w.aim == Aim::metres) {
    lines.add("least_length", w.least_length);
    lines.add("most_length", w.most_length);
  }
  if (w.aim == Aim::cost || w.aim == Aim::mix) add_prices(lines, w.prices);
  if (w.direction) lines.add("direction", *w.direction);
  if (w.groups != usual.groups) lines.add("groups", w.groups);
  for (const GivenTrench& t : w.locked) {
    lines.add("locked", 1);
    add_given(lines, t);
  }
  if (w.header_on) {
    lines.add("header_from", w.header_on->a);
    lines.add("header_to", w.header_on->b);
  }
  for (const GroupHeader& h : w.group_headers) {
    lines.add("header_group", h.group);
    lines.add("header_from", h.on.a);
    lines.add("header_to", h.on.b);
  }
  for (Point p : w.run_by) lines.add("run_by", p);
  for (const ClosedSide& s : w.closed) {
    lines.add("closed_house", s.house_id);
    lines.add("wall", s.wall);
  }
  for (const Segment& s : w.kept) {
    lines.add("kept", s.a);
    lines.add("end", s.b);
  }
  for (Point p : w.kept_run) lines.add("kept_run", p);
}

void add_wishes(Lines& lines, const Wishes& w) {
  lines.add("pattern", w.pattern);
  lines.add("pipe", w.pipe);
  lines.add("header_pipe", w.header_pipe);
  lines.add("unknown", w.unknown);
  lines.add("pitch", w.pitch);
  lines.add("coil_length", w.coil_length);
  lines.add("trench_length", w.trench_length);
  lines.add("loop_diameter", w.loop_diameter);
  lines.add("circuits", w.circuits);
  lines.add("trench_width", w.trench_width);
  lines.add("trench_depth", w.trench_depth);
  lines.add("spacing", w.spacing);
  lines.add("end_gap", w.end_gap);
  lines.add("run_width", w.run_width);
  lines.add("run_depth", w.run_depth);
  lines.add("bedding", w.bedding);
  lines.add("coil_in_run", static_cast<int>(w.coil_in_run));
  for (const GivenTrench& t : w.given) add_given(lines, t);
  add_arrangement(lines, w);
  // Of no weight for a flat coil, whose fingerprints are on paper already.
  if (w.pattern == CoilPattern::flat_coil) return;
  lines.add("level_distance", w.level_distance);
  lines.add("side_distance", w.side_distance);
  lines.add("return_on_top", static_cast<int>(w.return_on_top));
}

}  // namespace

std::string canonical_text(const Plan& plan) {
  Lines lines;
  add_site(lines, plan.site);
  add_ground(lines, plan.ground);
  add_wishes(lines, plan.wishes);
  return lines.take();
}

std::uint64_t fnv1a(std::string_view text) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 1099511628211ULL;
  }
  return hash;
}

std::string fingerprint(const Plan& plan) {
  static constexpr std::string_view digits = "0123456789abcdef";
  const std::uint64_t hash = fnv1a(canonical_text(plan));
  std::string out;
  for (int shift = 60; out.size() < 12; shift -= 4) out += digits[(hash >> shift) & 15U];
  return out;
}

}  // namespace underlawn
