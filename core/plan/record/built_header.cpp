// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/built_header.h"

#include <algorithm>

#include "flow/header_tree.h"
#include "plane/region.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kSameHead = 0.01;  // m

void move_points(Polyline& line, const std::vector<MovedHead>& moved) {
  for (Point& p : line)
    for (const MovedHead& m : moved)
      if (distance(p, m.planned) < kSameHead) {
        p = m.built;
        break;
      }
}

struct OnLine {
  Point at;
  double off = 1e300;    // m
  double along = 0;      // m from the line's start
  std::size_t line = 0;  // 0: the run, then the legs
};

void look_on(const Polyline& line, std::size_t index, Point p, OnLine& best) {
  double before = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Segment s{line[i - 1], line[i]};
    const Point at = nearest_on(s, p);
    if (distance(at, p) < best.off - 1e-6) best = {at, distance(at, p), before + distance(s.a, at), index};
    before += distance(s.a, s.b);
  }
}

// The nearest place of the run and the first `legs` legs.
OnLine nearest(const BuiltLines& lines, std::size_t legs, Point p) {
  OnLine best;
  look_on(lines.run, 0, p, best);
  for (std::size_t l = 0; l < legs; ++l) look_on(lines.legs[l], l + 1, p, best);
  return best;
}

void join_legs(BuiltLines& lines) {
  for (std::size_t l = 0; l < lines.legs.size(); ++l) {
    const OnLine start = nearest(lines, l, lines.legs[l].front());
    if (start.off > kHeadReach && start.off < 1e300) lines.legs[l].insert(lines.legs[l].begin(), start.at);
  }
}

void reach_heads(BuiltLines& lines, const std::vector<Trench>& trenches) {
  for (const Trench& t : trenches) {
    const OnLine place = nearest(lines, lines.legs.size(), t.head);
    if (place.off > kHeadReach && place.off < 1e300) lines.legs.push_back({place.at, t.head});
  }
}

// Legs that are no lines.
void drop_points(BuiltLines& lines) {
  for (std::size_t l = lines.legs.size(); l-- > 0;) {
    if (lines.legs[l].size() > 1) continue;
    const auto at = static_cast<std::ptrdiff_t>(l);
    lines.legs.erase(lines.legs.begin() + at);
    if (l < lines.depths.size()) lines.depths.erase(lines.depths.begin() + at);
  }
}

// Metres of each line up to the last thing that leaves it.
std::vector<double> used_lengths(const BuiltLines& lines, const std::vector<Trench>& trenches) {
  std::vector<double> used(lines.legs.size() + 1, 0);
  const auto mark = [&](const OnLine& place) {
    if (place.off < 1e300) used[place.line] = std::max(used[place.line], place.along);
  };
  for (const Trench& t : trenches) mark(nearest(lines, lines.legs.size(), t.head));
  for (std::size_t l = lines.legs.size(); l-- > 0;)
    if (used[l + 1] > kSameHead) mark(nearest(lines, l, lines.legs[l].front()));
  return used;
}

void drop_idle_ends(BuiltLines& lines, const std::vector<Trench>& trenches) {
  const std::vector<double> used = used_lengths(lines, trenches);
  std::vector<Polyline> kept;
  std::vector<std::optional<double>> depths;
  for (std::size_t l = 0; l < lines.legs.size(); ++l) {
    if (used[l + 1] <= kSameHead) continue;
    const double idle = length(lines.legs[l]) - used[l + 1];
    kept.push_back(idle > kSameHead ? trimmed(lines.legs[l], 0, idle) : lines.legs[l]);
    depths.push_back(l < lines.depths.size() ? lines.depths[l] : std::nullopt);
  }
  lines.legs = std::move(kept);
  lines.depths = std::move(depths);
}

}  // namespace

void make_lines_meet(BuiltLines& lines, const std::vector<MovedHead>& moved,
                     const std::vector<Trench>& trenches, bool run_measured, bool header_measured) {
  if (lines.run.size() < 2) return;
  if (!run_measured) move_points(lines.run, moved);
  if (!header_measured)
    for (Polyline& leg : lines.legs) move_points(leg, moved);
  drop_points(lines);
  join_legs(lines);
  reach_heads(lines, trenches);
  if (!header_measured) drop_idle_ends(lines, trenches);
}

}  // namespace underlawn
