// SPDX-License-Identifier: GPL-3.0-or-later
// Volumes of earth: what is dug, what is brought, what lies in a heap meanwhile, what is put back.
//
//   |<------- w + 2 s d ------->|     s = 0: vertical sides, with a shield, with shores or with nobody in the
//    \                         /      trench. Sides are chosen for coil trenches and for header and run apart
//     \        dug soil       /  d    (DigWishes). A slope starts at the floor; below kProtectFrom the
//     federal
//      \---------------------/        rule asks for none, yet a competent person must look into every trench.
//       \___ bedding _______/  b
//          |<--- w --->|              Where two cuts meet, earth and sand count once (cut_once.h); over a
//          coil
//                                     the run's pipes have sand of their own.
#pragma once

#include <vector>

#include "dig/dig_wishes.h"
#include "field/trench.h"
#include "ground/ground.h"
#include "layout/layout.h"
#include "layout/wishes.h"
#include "site/terrain.h"

namespace underlawn {

// Horizontal run per unit of depth of a protective slope: 29 CFR 1926 Subpart P, Table B-1 (depth under 6.1
// m).
double slope_for(SoilType soil);
// Trenches at least this deep need a protective system: 29 CFR 1926.652(a)(1). m.
inline constexpr double kProtectFrom = 1.524;

// m3 of bank soil: trapezoid of floor width `width`, `depth`, side slope (horizontal per vertical), times
// length. Ends are taken vertical. 0 where length or depth is not above 0.
double trench_volume(double length, double width, double depth, double slope);

// A heap of triangular section along a trench: width B = sqrt(4 V/(L tan R)), height (B/2) tan R, as the
// spoil bank of Nunnally, Construction Methods and Management, sec. 2-5. Zero where there is nothing to heap
// or no angle to heap it at.
struct SpoilHeap {
  double width = 0;   // m across
  double height = 0;  // m
  bool operator==(const SpoilHeap&) const = default;
};
SpoilHeap spoil_heap(double loose_volume, double length, double repose);

struct EarthWork {
  double length = 0;   // m of trench
  double bank = 0;     // m3 in place
  double bedding = 0;  // m3 of sand brought, compacted in place, to the sides of the cut (pipe not taken off)
  double loose = 0;    // m3 in the heap: bank (1 + swell)
  double backfill = 0;  // m3 to be filled with the dug soil, compacted in place: bank - bedding
  double surplus_loose =
      0;  // m3 loose left over: (bank - backfill/(1 - shrinkage)) (1 + swell); negative when short
  // Where cuts meet, earth and sand are counted once: what was taken off `bank` and `bedding` for that. m3
  double bank_met = 0, bedding_met = 0;
  // Of a coil trench that the supply run shares: sand round the run's pipes, which lie over the coil, in
  // `bedding`; and what of the backfill comes between the two layers of sand. m3
  double run_bedding = 0, under_run = 0;
  bool operator==(const EarthWork&) const = default;
};

// How deep a coil trench is along its middle line. Heights are over the level of the spot heights.
struct FloorLevel {
  double ground_head = 0, ground_end = 0;  // m
  double floor_head = 0, floor_end = 0;    // m
  double mean_depth = 0;                   // m, over the length
  double mean_square = 0;                  // m2, mean of the depth squared
  double deepest = 0;                      // m
  double along_slope = 0;                  // m, the middle line measured on the ground
  bool operator==(const FloorLevel&) const = default;
};
// Floors follow the ground `trench.depth` below it, or lie level that far below its lowest place
// (Wishes::level_floor). Where the ground is not known it is level at 0.
FloorLevel floor_level(const Trench& trench, const Terrain& terrain, bool level_floor);
// m3: length x mean over the length of depth x (width + slope x depth).
double trench_volume(double length, double width, const FloorLevel& floor, double slope);

// With the sides chosen.
struct DigPlan {
  double slope = 0;                 // horizontal per vertical of sides laid back, whether any are or not
  double coil_slope = 0;            // of coil trenches: `slope` or, vertical, 0
  double run_slope = 0;             // of header and run, likewise
  std::vector<EarthWork> trenches;  // in the layout's order
  EarthWork header, run;            // run without the stretch a coil trench uses
  EarthWork total;
  std::vector<FloorLevel> floors;  // by trench
  double top_width_sloped = 0;  // m across a coil trench at the ground, where it is widest, were it laid back
  double spoil_width = 0;       // m across the heap beside the largest coil trench
  double spoil_height = 0;      // m
  bool operator==(const DigPlan&) const = default;
};

// Header and run follow the ground. Of `how` the sides and the slope are read; without a slope Table B-1's
// for the soil class.
DigPlan make_dig(const Layout& layout, const Wishes& wishes, const Ground& ground,
                 const Terrain& terrain = {}, const DigWishes& how = {});

// m of the line that lie on the floor of a coil trench whose role is supply: dug once, as coil trench.
double stretch_in_supply_trenches(const Polyline& line, const std::vector<Trench>& trenches);

}  // namespace underlawn
