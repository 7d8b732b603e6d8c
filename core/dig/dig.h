// SPDX-License-Identifier: GPL-3.0-or-later
// Volumes of earth: what is dug, what is brought, what lies in a heap meanwhile, what is put back.
#pragma once

#include <vector>

#include "field/trench.h"
#include "ground/ground.h"
#include "layout/layout.h"
#include "layout/wishes.h"

namespace underlawn {

// Horizontal run per unit of depth of a protective slope: 29 CFR 1926 Subpart P, Table B-1 (depth under 6.1 m).
double slope_for(SoilType soil);
// Trenches at least this deep need a protective system: 29 CFR 1926.652(a)(1). m.
inline constexpr double kProtectFrom = 1.524;

// m3 of bank soil: trapezoid of floor width `width`, `depth`, side slope (horizontal per vertical), times length.
// Ends are taken vertical.
double trench_volume(double length, double width, double depth, double slope);

struct EarthWork {
  double length = 0;      // m of trench
  double bank = 0;        // m3 in place
  double bedding = 0;     // m3 of sand brought, compacted in place (pipe volume not taken off)
  double loose = 0;       // m3 in the heap
  double backfill = 0;    // m3 in place, of the dug soil: bank - bedding
  double surplus_loose = 0;  // m3 loose that is left over, negative when short
  bool operator==(const EarthWork&) const = default;
};

struct DigPlan {
  double slope = 0;          // horizontal per vertical for the soil type
  std::vector<EarthWork> trenches_vertical, trenches_sloped;  // by trench, in the layout's order
  EarthWork header_vertical, header_sloped, run_vertical, run_sloped;  // run without the stretch a coil trench uses
  EarthWork total_vertical, total_sloped;
  double top_width_sloped = 0;  // m across a coil trench at the ground
  double spoil_width = 0;       // m across the heap beside a coil trench (triangle at the angle of repose)
  double spoil_height = 0;      // m
  bool operator==(const DigPlan&) const = default;
};

DigPlan make_dig(const Layout& layout, const Wishes& wishes, const Ground& ground);

}  // namespace underlawn
