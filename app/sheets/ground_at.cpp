// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/ground_at.h"

#include <algorithm>

#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "dig/machine_ways.h"
#include "layout/amounts.h"
#include "plane/strip.h"
#include "sheets/works_at.h"

namespace underlawn {

namespace {

constexpr double kSwath = 30;  // m across: over a trench and every heap beside it

const DigStep& step_of(const Outcome& outcome, int step) {
  return outcome.order->steps[static_cast<std::size_t>(step)];
}

Region floor_of(const Polyline& line, double width) {
  return line.size() < 2 ? Region{} : region_of(strip_along(line, width));
}

// Ground on either side of what is dug of a step so far: its heap has grown no farther.
Region beside(const DigStep& step, double share) {
  if (share >= 1) return floor_of(trimmed(step.line, -kSwath, -kSwath), 2 * kSwath);
  return floor_of(first_part(step.line, share), 2 * kSwath);
}

Region heaps_of(const DigStep& step) {
  std::vector<Region> rings;
  for (const Ring& heap : step.spoil)
    if (heap.size() > 2) rings.push_back(region_of(heap));
  return unite(rings);
}

// The wheels' track, round at its ends.
void add_way(std::vector<Region>& all, const Polyline& way, double width) {
  if (!way.empty()) all.push_back(buffered(way, width / 2));
}

// A step's trench with its earth and room to work, its heap where that lies, and the ways to it.
void add_taken(std::vector<Region>& all, const Plan& plan, const DigStep& step) {
  all.push_back(floor_of(step.line, torn_width(step.width, step.depth)));
  all.push_back(heaps_of(step));
  add_way(all, step.line, plan.dig.excavator.width);
  add_way(all, step.way, plan.dig.excavator.width);
  add_way(all, step.truck_way, kTruckWidth);
}

bool no_lawn(FeatureKind kind) {
  return kind == FeatureKind::house || kind == FeatureKind::drive || kind == FeatureKind::no_dig;
}

Region of_the_lawn(const Plan& plan, const std::vector<Region>& parts) {
  Region all = intersect(unite(parts), region_of(lot_ring(plan.site)));
  for (const Feature& f : plan.site.features)
    if (no_lawn(f.kind) && f.points.size() > 2) all = subtract(all, region_of(f.points));
  return all;
}

void add_laydown(std::vector<Region>& all, const DigOrder& order) {
  if (order.laydown && order.laydown_radius > 0)
    all.push_back(buffered(*order.laydown, order.laydown_radius));
}

// What of a trench is filled back by then.
Region filled_part(const Outcome& outcome, const PieceAt& piece, const std::vector<PieceAt>& all) {
  const DigStep& step = step_of(outcome, piece.step);
  const Region whole = floor_of(step.line, step.width);
  if (piece.back >= 1) return whole;
  if (piece.back <= 0) return {};
  if (piece.caster < 0) return floor_of(first_part(step.line, piece.back), step.width);
  const auto casts = std::ranges::find(all, piece.caster, &PieceAt::step);
  return casts == all.end() ? Region{} : intersect(whole, beside(step_of(outcome, casts->step), casts->dug));
}

}  // namespace

Polyline first_part(const Polyline& line, double share) {
  if (share >= 1) return line;
  Polyline part{line.front()};
  const PlaceAlong place = place_along(line, share * length(line));
  for (std::size_t i = 1; i <= place.leg && i < line.size(); ++i) part.push_back(line[i]);
  part.push_back(place.at);
  return part;
}

GroundAt ground_at(const Plan& plan, const Outcome& outcome, double at) {
  GroundAt now;
  if (!outcome.calendar || !outcome.order) return now;
  const std::vector<PieceAt> pieces = works_at(outcome, at);
  std::vector<Region> open, filled, heaps, taken;
  for (const PieceAt& piece : pieces) {
    const DigStep& step = step_of(outcome, piece.step);
    filled.push_back(filled_part(outcome, piece, pieces));
    open.push_back(subtract(floor_of(first_part(step.line, piece.dug), step.width), filled.back()));
    if (piece.earth) heaps.push_back(intersect(heaps_of(step), beside(step, piece.dug)));
    add_taken(taken, plan, step);
  }
  if (!pieces.empty()) add_laydown(taken, *outcome.order);
  // Where header, run and trench meet, the ground is open until the last of them is filled.
  now.open = unite(open);
  now.filled = subtract(unite(filled), now.open);
  now.heaps = subtract(subtract(unite(heaps), now.open), now.filled);
  now.trodden = of_the_lawn(plan, taken);
  return now;
}

Region ground_used(const Plan& plan, const Outcome& outcome) {
  if (!outcome.order) return {};
  std::vector<Region> taken;
  for (const DigStep& step : outcome.order->steps) {
    add_taken(taken, plan, step);
    add_way(taken, step.fill_way, kTruckWidth);
  }
  add_way(taken, outcome.order->way_out, plan.dig.excavator.width);
  add_laydown(taken, *outcome.order);
  return of_the_lawn(plan, taken);
}

}  // namespace underlawn
