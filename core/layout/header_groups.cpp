// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/header_groups.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

constexpr double kOn = 2e-3;        // m
constexpr double kAcross = 0.0175;  // rad: a degree
constexpr double kNearer = 0.05;    // m

int group_of_trench(const Layout& l, std::size_t trench) {
  std::size_t from = 0;
  for (std::size_t g = 0; g < l.groups.size(); ++g) {
    from += static_cast<std::size_t>(l.groups[g]);
    if (trench < from) return static_cast<int>(g) + 1;
  }
  return 0;  // locked, or in the run
}

bool passes(const Polyline& leg, Point p) {
  for (std::size_t i = 1; i < leg.size(); ++i)
    if (distance(Segment{leg[i - 1], leg[i]}, p) < kOn) return true;
  return false;
}

// Of the heads it leads to, not of one that it starts from; 0 where it leads to none.
int group_by_heads(const Layout& l, const Polyline& leg) {
  int group = 0;
  for (std::size_t t = 0; t < l.trenches.size(); ++t)
    if (distance(leg.front(), l.trenches[t].head) > kOn && passes(leg, l.trenches[t].head))
      group = std::max(group, group_of_trench(l, t));
  return group;
}

bool across(const Layout& l, int group, const Segment& line) {
  for (std::size_t t = 0; t < l.trenches.size(); ++t) {
    if (group_of_trench(l, t) != group) continue;
    const Point u = unit(l.trenches[t].end - l.trenches[t].head);
    return std::abs(dot(u, unit(line.b - line.a))) < std::sin(kAcross);
  }
  return false;
}

std::vector<const Trench*> trenches_of(const Layout& l, int group) {
  std::vector<const Trench*> all;
  for (std::size_t t = 0; t < l.trenches.size(); ++t)
    if (l.groups.size() < 2 ? l.trenches[t].role == TrenchRole::field && !l.trenches[t].locked
                            : group_of_trench(l, t) == group)
      all.push_back(&l.trenches[t]);
  return all;
}

double farthest_head(const std::vector<const Trench*>& trenches, const Segment& line) {
  double most = 0;
  for (const Trench* t : trenches) most = std::max(most, distance(line, t->head));
  return most;
}

// Across the trenches, half way between the heads that face each other.
std::optional<Segment> line_between_heads(const std::vector<const Trench*>& trenches) {
  if (trenches.size() < 2) return std::nullopt;
  const Point u = unit(trenches.front()->end - trenches.front()->head), n = left_normal(u);
  double low = 1e300, high = -1e300, from = 1e300, to = -1e300;
  for (const Trench* t : trenches) {
    low = std::min(low, dot(t->head, u)), high = std::max(high, dot(t->head, u));
    from = std::min(from, dot(t->head, n)), to = std::max(to, dot(t->head, n));
  }
  if (to - from < kSamePlace) return std::nullopt;
  const Point on = (low + high) / 2 * u;
  return Segment{on + from * n, on + to * n};
}

}  // namespace

int group_of_leg(const Layout& l, std::size_t leg) {
  if (l.groups.size() < 2) return 1;
  for (std::size_t i = leg; i < l.header.legs.size(); ++i)
    if (const int group = group_by_heads(l, l.header.legs[i])) return group;
  return static_cast<int>(l.groups.size());
}

std::optional<Segment> line_of_header(const Layout& l, int group) {
  std::optional<Segment> longest;
  std::vector<const Polyline*> legs;
  for (std::size_t i = 0; i < l.header.legs.size(); ++i)
    if (group_of_leg(l, i) == group) legs.push_back(&l.header.legs[i]);
  for (const Polyline* a : legs)
    for (const Polyline* b : legs)
      for (Point p : {a->front(), a->back()})
        for (Point q : {b->front(), b->back()}) {
          const double apart = distance(p, q);
          if (apart < kSamePlace || (longest && apart <= distance(longest->a, longest->b))) continue;
          if (l.groups.size() < 2 || across(l, group, {p, q})) longest = Segment{p, q};
        }
  const auto trenches = trenches_of(l, group);
  const auto between = line_between_heads(trenches);
  const bool nearer =
      longest && between && farthest_head(trenches, *between) < farthest_head(trenches, *longest) - kNearer;
  return nearer ? between : longest;
}

std::optional<Segment> header_line(const Wishes& w, int group) {
  if (group == 1) return w.header_on;
  for (const GroupHeader& h : w.group_headers)
    if (h.group == group) return h.on;
  return std::nullopt;
}

bool header_is_held(const Wishes& w, int group) {
  if (group > 0) return header_line(w, group).has_value();
  return w.header_on || !w.group_headers.empty();
}

Wishes with_header_line(Wishes w, int group, const std::optional<Segment>& line) {
  if (group == 1) {
    w.header_on = line;
    return w;
  }
  std::erase_if(w.group_headers, [group](const GroupHeader& h) { return h.group == group; });
  if (line) w.group_headers.push_back({group, *line});
  std::sort(w.group_headers.begin(), w.group_headers.end(),
            [](const GroupHeader& l, const GroupHeader& r) { return l.group < r.group; });
  return w;
}

}  // namespace underlawn
