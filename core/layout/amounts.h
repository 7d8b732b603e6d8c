// SPDX-License-Identifier: GPL-3.0-or-later
// What an arrangement takes: metres, ground, lawn, pipe, and how near it comes to trees.
#pragma once

#include <vector>

#include "layout/layout.h"
#include "site/terrain.h"

namespace underlawn {

struct TreeDistance {
  int feature_id = 0;
  double nearest = 0;  // m from the trunk's centre to the nearest edge of a trench floor, header and run too
  bool operator==(const TreeDistance&) const = default;
};

struct Amounts {
  double trench = 0;     // m of coil trench
  double header = 0;     // m of header trench
  double run = 0;        // m of supply run, without what a coil trench shares with it
  double dug = 0;        // m3 with vertical sides, before swell
  double bedding = 0;    // m3 of sand
  double lawn = 0;       // m2 torn up: trenches, spoil and a working strip beside them; no pavement, no house
  double pavement = 0;   // m2 of drives that header and run cut
  double coil_pipe = 0;  // m
  double header_pipe = 0;           // m: supply and return, of header and run
  int joints = 0;                   // fused, before pipes are sized
  int hand_crossings = 0;           // of utilities
  std::vector<TreeDistance> trees;  // nearest first
  bool operator==(const Amounts&) const = default;
};

// A trench with spoil beside it (swell kSpoilSwell, heap at its angle of rest kSpoilSlope, kSpoilOff from the
// edge: 29 CFR 1926.651(j)(2)) and room to work on the other side, from edge to edge. m.
double torn_width(double trench_width, double trench_depth);
inline constexpr double kSpoilSwell = 1.25;  // common practice, no source
inline constexpr double kSpoilSlope = 1.5;   // horizontal to vertical; common practice, no source
inline constexpr double kSpoilOff = 0.6096;  // m: 2 ft
inline constexpr double kWorkRoom = 1.0;     // m; common practice, no source

// Of the trenches, header, run and crossings of a layout. `terrain`: of the site's spot heights.
Amounts amounts_of(const Site& site, const Wishes& wishes, const Layout& layout, const Terrain& terrain);
Amounts amounts_of(const Site& site, const Wishes& wishes, const Layout& layout);

// m3 dug more than on level ground, because the floor is level and lies Wishes::trench_depth below the lowest
// ground along the trench's middle line.
double dug_for_level_floor(const Terrain& terrain, const Polyline& middle_line, double width);

// Fused joints, both pipes, before pipes are sized. Of cost/joints.h: a tee and a reducer (4) at every
// circuit but the last, an elbow and a reducer (3) there, a union (1) at the house: 8 for each circuit. Not
// in it: corners, and forks of the header where no circuit leaves. The search weighs it; shown is the count
// of cost/joints.h.
int joints_of(const Layout& layout);

// What the amounts cost; Prices::crew_day and what is not bought are left out.
double money_of(const Amounts& amounts, const Prices& prices);
// What the designer would pay not to have: circuits missing, trenches near trees.
double regret_of(const Amounts& amounts, const Prices& prices, int missing_circuits);
// Money for a metre of plain run trench: digging, sand, lawn and both pipes.
double money_of_run_metre(const Wishes& wishes);

}  // namespace underlawn
