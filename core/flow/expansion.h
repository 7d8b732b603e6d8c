// SPDX-License-Identifier: GPL-3.0-or-later
// What winter and summer do to the liquid in the loop.
//
// Warmed, polyethylene's bore grows more than the liquid in it: a warm loop draws liquid or loses pressure, a
// cold one gives liquid back or gains pressure. Growth of the bore: held lengthwise by soil 2(1+nu) alpha,
// free 3 alpha (polyethylene.h). Assumed: the whole loop has one temperature.
#pragma once

#include "flow/loop_volume.h"
#include "pipe/fluid.h"
#include "pipe/polyethylene.h"

namespace underlawn {

struct Seasons {
  double coldest = 0, fill = 0, warmest = 0;  // deg C, mean of the whole loop; coldest <= fill <= warmest
};

// Refuses seasons out of order or not numbers.
Result<void> check_seasons(const Seasons& seasons);

struct ExpansionLoop {
  LoopVolume loop;
  Fluid fluid = Fluid::water;
  double mass_fraction = 0;
  PipeHold hold = PipeHold::held;
  PeCreep creep;
};

struct VolumeChange {
  double bore = 0, liquid = 0;                    // m3, growth
  double drawn() const { return bore - liquid; }  // m3; more than 0: the loop draws liquid in
};
// Refusals of check_loop, check_creep and liquid_growth (the liquid freezes).
Result<VolumeChange> volume_change(const ExpansionLoop& loop, double from, double to);

// An open (unpressurised) loop: m3 its standing column or canister must hold between the lowest and the
// highest level, and how far it moves from the level at fill: below 0 in the season the loop draws.
struct OpenLoop {
  double winter = 0, summer = 0;  // m3 given out (+) or drawn (-)
  double canister = 0;            // m3 between the marks
};
// Refusals of volume_change, seasons out of order.
Result<OpenLoop> open_loop(const ExpansionLoop& loop, const Seasons& seasons);

}  // namespace underlawn
