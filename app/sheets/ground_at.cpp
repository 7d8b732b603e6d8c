// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/ground_at.h"

#include <algorithm>

#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "dig/ground_used.h"
#include "dig/machine_ways.h"
#include "plane/strip.h"
#include "sheets/works_at.h"

namespace underlawn {

namespace {

constexpr double kSwath = 30;  // m across: over a trench and every heap beside it

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
    add_ground_of(step, plan.dig.excavator, taken);
    add_track(taken, step.way, plan.dig.excavator.width);
    add_track(taken, step.truck_way, kTruckWidth);
  }
  if (!pieces.empty()) add_laydown(*outcome.order, taken);
  // Where header, run and trench meet, the ground is open until the last of them is filled.
  now.open = unite(open);
  now.filled = subtract(unite(filled), now.open);
  now.heaps = subtract(subtract(unite(heaps), now.open), now.filled);
  now.trodden = of_the_lawn(plan.site, taken);
  return now;
}

Region ground_used(const Plan& plan, const Outcome& outcome) {
  return outcome.order ? ground_used(plan.site, *outcome.order, plan.dig.excavator) : Region{};
}

}  // namespace underlawn
