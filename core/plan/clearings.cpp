// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/clearings.h"

#include <limits>

#include "base/say.h"
#include "plane/region.h"
#include "plane/strip.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

std::vector<Segment> sides(const Polyline& line, bool closed) {
  std::vector<Segment> all;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) all.push_back({line[i], line[i + 1]});
  if (closed && line.size() > 2) all.push_back({line.back(), line.front()});
  if (all.empty() && !line.empty()) all.push_back({line.front(), line.front()});
  return all;
}

Point nearest(const Segment& s, Point p) {
  return s.a == s.b ? s.a : nearest_on(s, p);
}

struct Dug {
  std::string name;
  Ring outline;
  bool coil = false;
};

std::vector<Dug> dug(const Plan& plan, const Layout& layout) {
  std::vector<Dug> all;
  for (const Trench& t : layout.trenches)
    all.push_back({say("Trench {}", std::to_string(t.number)), floor_of(t), true});
  const auto conduit = [&](const std::string& name, const Polyline& line) {
    const Polyline clean = line.size() < 2 ? line : without_idle_points(line);
    if (clean.size() > 1 && length(clean) > kSamePlace)
      all.push_back({name, strip_along(clean, plan.wishes.run_width), false});
  };
  for (const Polyline& leg : layout.header.legs) conduit(say("Header"), leg);
  conduit(say("Supply run"), layout.run.line);
  return all;
}

struct Thing {
  std::string name;
  int id = 0;
  Polyline line;
  bool closed = false;
};

void add_nearest(std::vector<Clearing>& all, const std::vector<Dug>& dug, bool coil, const Thing& thing,
                 double required, const std::string& source) {
  const Dug* best = nullptr;
  Segment line;
  for (const Dug& d : dug) {
    if (d.coil != coil) continue;
    const Segment s = shortest_between(d.outline, true, thing.line, thing.closed);
    if (best != nullptr && distance(s.a, s.b) >= distance(line.a, line.b)) continue;
    best = &d;
    line = s;
  }
  if (best != nullptr)
    all.push_back({best->name, thing.name, thing.id, line, distance(line.a, line.b), required, source, coil});
}

}  // namespace

Segment shortest_between(const Polyline& a, bool a_closed, const Polyline& b, bool b_closed) {
  if (a_closed && a.size() > 2 && contains(Ring(a), b.front())) return {b.front(), b.front()};
  if (b_closed && b.size() > 2 && contains(Ring(b), a.front())) return {a.front(), a.front()};
  Segment best{a.front(), b.front()};
  const auto offer = [&best](Point p, Point q) {
    if (distance(p, q) < distance(best.a, best.b)) best = {p, q};
  };
  for (const Segment& s : sides(a, a_closed))
    for (const Segment& t : sides(b, b_closed)) {
      if (distance(s, t) == 0) {
        const Point p = nearest(s, t.a);
        return {p, p};
      }
      offer(nearest(s, t.a), t.a);
      offer(nearest(s, t.b), t.b);
      offer(s.a, nearest(t, s.a));
      offer(s.b, nearest(t, s.b));
    }
  return best;
}

std::vector<Clearing> clearings(const Plan& plan, const Outcome& outcome) {
  const std::vector<Dug> all = dug(plan, outcome.layout);
  std::vector<Clearing> found;
  for (const Feature& f : plan.site.features) {
    if (f.points.empty()) continue;
    const Thing thing{display_name(f), f.id, f.points, shape_of(f.kind) == FeatureShape::area};
    const std::string source = clearance_reason(plan.site, f);
    add_nearest(found, all, true, thing, trench_clearance(plan.site, f), source);
    if (!crossable(f) && f.kind != FeatureKind::house)
      add_nearest(found, all, false, thing, run_clearance(plan.site, f), source);
  }
  const Ring lot = lot_ring(plan.site);
  for (std::size_t i = 0; i < lot.size() && lot.size() > 2; ++i) {
    const Thing edge{
        say("Lot edge {}", std::to_string(i + 1)), 0, {lot[i], lot[(i + 1) % lot.size()]}, false};
    const double setback = plan.site.lot[i].setback;
    const std::string source = setback == kDefaultSetback
                                   ? say("Texas 16 TAC 6.106 and Maine 144 CMR 232 ch. 6: 10 ft")
                                   : say("entered for this edge");
    add_nearest(found, all, true, edge, setback, source);
    add_nearest(found, all, false, edge, setback, source);
  }
  return found;
}

}  // namespace underlawn
