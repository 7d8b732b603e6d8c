// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/held.h"

#include <algorithm>
#include <cmath>

#include "layout/legality.h"

namespace underlawn {

namespace {

constexpr double kParallel = 1e-3;  // rad
constexpr int kNoRestriction = -1;  // of what is held
constexpr double kAlike = std::numbers::pi / 6;
constexpr double kBesideCoil = 1;  // m of plain digging a metre: as connect() prices its own

void add_capsule(Confines& g, Point a, Point b, double reach) {
  g.capsules.push_back({a, b, std::max(0.0, reach)});
  g.owner.push_back(kNoRestriction);
}

void add_area(Confines& g, const Ring& ring, double reach) {
  for (std::size_t i = 0; i < ring.size(); ++i) add_capsule(g, ring[i], ring[(i + 1) % ring.size()], reach);
  g.areas.push_back(ring);
  g.area_owner.push_back(kNoRestriction);
}

// rad between two lines, 0..pi/2
double angle_to(const Segment& leg, double angle) {
  const Point u = unit(leg.b - leg.a), v = direction(angle);
  return std::atan2(std::abs(cross(u, v)), std::abs(dot(u, v)));
}

void add_trench(Confines& g, const Segment& leg, const Wishes& w, double angle) {
  const double turn = angle_to(leg, angle), spacing = std::max(w.spacing, w.trench_width);
  add_area(g, rectangle_along(leg, w.trench_width), w.end_gap);
  if (turn >= kAlike) return;
  if (turn < kParallel)
    add_area(g, rectangle_along(leg, 2 * spacing - w.trench_width), 0);
  else
    add_capsule(g, leg.a, leg.b, spacing - w.trench_width / 2 * std::cos(turn));
}

// Without half a header trench's width at its head.
Polyline coil_of(const Polyline& trench, double run_width) {
  Polyline line = trench;
  if (distance(line[0], line[1]) > run_width / 2 + kSamePlace)
    line[0] = line[0] + (run_width / 2) * unit(line[1] - line[0]);
  return line;
}

}  // namespace

std::vector<Segment> legs_of(const std::vector<Polyline>& lines) {
  std::vector<Segment> legs;
  for (const Polyline& line : lines)
    for (std::size_t i = 1; i < line.size(); ++i)
      if (distance(line[i - 1], line[i]) > kSamePlace) legs.push_back({line[i - 1], line[i]});
  return legs;
}

Wishes apart_rule(const Wishes& wishes) {
  Wishes w = wishes;
  w.end_gap = std::max(wishes.spacing, wishes.end_gap);
  w.spacing = w.end_gap + wishes.trench_width;
  return w;
}

Confines with_held(const Confines& ground, const Held& held, const Wishes& w, double angle) {
  Confines g = ground;
  for (const Segment& leg : legs_of(held.trenches)) add_trench(g, leg, w, angle);
  const Wishes rule = apart_rule(w);
  for (const Segment& leg : legs_of(held.apart)) add_trench(g, leg, rule, angle);
  for (const Segment& leg : legs_of(held.conduits)) add_capsule(g, leg.a, leg.b, w.run_width / 2);
  return g;
}

Confines header_with_held(const Confines& for_header, const Held& held, const Wishes& w) {
  Confines g = for_header;
  for (const auto* lines : {&held.trenches, &held.apart})
    for (const Polyline& line : *lines)
      for (const Segment& leg : legs_of({coil_of(line, w.run_width)}))
        add_area(g, rectangle_along(leg, w.trench_width), 0);
  return g;
}

Conduits conduits_with_held(Conduits c, const Held& held) {
  std::vector<Region> kept, beside;
  for (const Polyline& line : held.trenches) {
    kept.push_back(region_of(coil_keepout(line, c)));
    for (const Segment& leg : legs_of({coil_of(line, c.width)}))
      beside.push_back(region_of(rectangle_along(leg, std::max(c.spacing, 2.2 * c.keep))));
  }
  if (kept.empty()) return c;
  c.free = subtract(c.free, unite(kept));
  c.dear.add({unite(beside), kBesideCoil, 0});
  std::erase_if(c.stubs, [&](const Polyline& stub) { return !contains(c.free, stub.back()); });
  return c;
}

bool keeps_off_held(const Segment& trench, const Held& held, const Wishes& w) {
  for (const Segment& leg : legs_of(held.trenches))
    if (!pair_is_legal(leg, trench, w)) return false;
  const Wishes rule = apart_rule(w);
  for (const Segment& leg : legs_of(held.apart))
    if (!pair_is_legal(leg, trench, rule)) return false;
  return std::all_of(held.conduits.begin(), held.conduits.end(),
                     [&](const Polyline& line) { return conduit_keeps_off(line, trench, w); });
}

}  // namespace underlawn
