// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig.h"

#include <algorithm>
#include <cmath>

#include "dig/cut_once.h"

namespace underlawn {

namespace {

struct Section {
  double length, width;
  FloorLevel floor;
  double slope;
};

double loosened(double bank, const Ground& ground) {
  return bank * (1 + ground.swell);
}

EarthWork dug(const Section& s, double bedding_depth) {
  EarthWork w;
  if (!(s.length > 0)) return w;
  w.length = s.length;
  w.bank = trench_volume(s.length, s.width, s.floor, s.slope);
  w.bedding = trench_volume(s.length, s.width, std::min(bedding_depth, s.floor.mean_depth), s.slope);
  return w;
}

// Once bank and bedding are known.
void fill_up(EarthWork& w, const Ground& ground) {
  w.loose = loosened(w.bank, ground);
  w.backfill = w.bank - w.bedding;
  w.surplus_loose = loosened(w.bank - w.backfill / (1 - ground.shrinkage), ground);
}

void add(EarthWork& sum, const EarthWork& w) {
  sum.length += w.length;
  sum.bank += w.bank;
  sum.bedding += w.bedding;
  sum.loose += w.loose;
  sum.backfill += w.backfill;
  sum.surplus_loose += w.surplus_loose;
  sum.bank_met += w.bank_met;
  sum.bedding_met += w.bedding_met;
  sum.run_bedding += w.run_bedding;
  sum.under_run += w.under_run;
}

EarthWork total(const std::vector<EarthWork>& trenches, const EarthWork& header, const EarthWork& run) {
  EarthWork sum;
  for (const EarthWork& w : trenches) add(sum, w);
  add(sum, header);
  add(sum, run);
  return sum;
}

SpoilHeap largest_heap(const std::vector<EarthWork>& works, double repose) {
  SpoilHeap largest;
  for (const EarthWork& w : works) {
    const SpoilHeap heap = spoil_heap(w.loose, w.length, repose);
    if (heap.width > largest.width) largest = heap;
  }
  return largest;
}

}  // namespace

double slope_for(SoilType soil) {
  switch (soil) {
    case SoilType::stable_rock:
      return 0;
    case SoilType::type_a:
      return 0.75;
    case SoilType::type_b:
      return 1;
    case SoilType::type_c:
      return 1.5;
  }
  return 1.5;  // 1926.652(b)(1): as Type C unless shown better
}

double trench_volume(double length, double width, double depth, double slope) {
  if (!(length > 0) || !(depth > 0)) return 0;
  return length * depth * (width + slope * depth);
}

double trench_volume(double length, double width, const FloorLevel& floor, double slope) {
  if (!(length > 0) || !(floor.mean_depth > 0)) return 0;
  return length * (width * floor.mean_depth + slope * floor.mean_square);
}

FloorLevel floor_level(const Trench& t, const Terrain& terrain, bool level_floor) {
  FloorLevel f = even_floor(t.depth);
  f.mean_square += t.fall * t.fall / 12;  // of a depth that changes evenly
  f.deepest += std::abs(t.fall) / 2;
  f.floor_head = -t.depth + t.fall / 2;
  f.floor_end = -t.depth - t.fall / 2;
  f.along_slope = length_of(t);
  if (!terrain.is_known() || !(f.along_slope > 0)) return f;
  const GroundLine ground = terrain.along(middle_line(t));
  f.ground_head = ground.stations.front().height;
  f.ground_end = ground.stations.back().height;
  f.along_slope = ground.along_slope;
  f.floor_head += f.ground_head;
  f.floor_end += f.ground_end;
  if (!level_floor || t.fall != 0) return f;
  f.floor_head = f.floor_end = ground.lowest - t.depth;
  f.mean_depth = ground.mean - f.floor_head;
  f.deepest = ground.highest - f.floor_head;
  f.mean_square = 0;
  for (std::size_t i = 1; i < ground.stations.size(); ++i) {  // depth straight between stations: exact
    const Station &a = ground.stations[i - 1], &b = ground.stations[i];
    const double da = a.height - f.floor_head, db = b.height - f.floor_head;
    f.mean_square += (b.along - a.along) * (da * da + da * db + db * db) / 3;
  }
  f.mean_square /= ground.length;
  return f;
}

SpoilHeap spoil_heap(double loose_volume, double length, double repose) {
  const double steepness = std::tan(repose);
  if (!(loose_volume > 0) || !(length > 0) || !(steepness > 0)) return {};
  const double width = std::sqrt(4 * loose_volume / (length * steepness));
  return {width, width / 2 * steepness};
}

DigPlan make_dig(const Layout& layout, const Wishes& wishes, const Ground& ground, const Terrain& terrain,
                 const DigWishes& how) {
  DigPlan plan;
  plan.slope = how.slope.value_or(slope_for(ground.soil));
  plan.coil_slope = how.coil_sides == Sides::slope ? plan.slope : 0;
  plan.run_slope = how.run_sides == Sides::slope ? plan.slope : 0;
  for (const Trench& t : layout.trenches) {
    plan.floors.push_back(floor_level(t, terrain, wishes.level_floor));
    plan.trenches.push_back(
        dug({length_of(t), t.width, plan.floors.back(), plan.coil_slope}, wishes.bedding));
    plan.top_width_sloped =
        std::max(plan.top_width_sloped, t.width + 2 * plan.slope * plan.floors.back().deepest);
  }
  const double shared = stretch_in_supply_trenches(layout.run.line, layout.trenches);
  const auto conduit = [&](double length, const FloorLevel& floor) {
    return dug({length, wishes.run_width, floor, plan.run_slope}, wishes.bedding);
  };
  plan.header = conduit(layout.header.length, floor_of_header(layout.header, wishes.run_depth));
  plan.run = conduit(std::max(0.0, layout.run.length - shared),
                     even_floor(layout.run.depth.value_or(wishes.run_depth)));
  lay_run_over_coils(plan, layout, wishes);
  count_once(plan, layout, wishes);
  for (EarthWork& w : plan.trenches) fill_up(w, ground);
  fill_up(plan.header, ground);
  fill_up(plan.run, ground);
  plan.total = total(plan.trenches, plan.header, plan.run);
  const SpoilHeap heap = largest_heap(plan.trenches, ground.repose);
  plan.spoil_width = heap.width;
  plan.spoil_height = heap.height;
  return plan;
}

}  // namespace underlawn
