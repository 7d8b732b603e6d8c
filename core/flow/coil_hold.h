// SPDX-License-Identifier: GPL-3.0-or-later
// A coil that is covered before the whole loop is tested: how it is proved first and watched meanwhile.
//
// No source gives a pressure for that. It follows from the rule in use for the whole loop, 1.5 times the
// working pressure (test_pressure.h): the coil is proved at the test pressure with nobody near, then let down
// to the working pressure, at which it stays while earth comes on it and people stand by the gauge. Let down
// so far the pipe draws together again, so that a sound coil's gauge first rises: a fall tells.
#pragma once

#include "flow/loop_test.h"

namespace underlawn {

// s at the test pressure with make-up water: "no visible leak within 30 min" before covering, ENERGY STAR
// Homes Northwest, geothermal standard.
inline constexpr double kCoilProved = 1800;
inline constexpr double kCoilFilled = 600;  // s to fill it, let the air out and pump up: our own, no source

struct CoilHold {
  double proved = 0;  // Pa at the gauge, for kCoilProved
  double kept = 0;    // Pa at the gauge, valve shut, until the coil is covered
  double least = 0;   // Pa that the gauge of a sound coil may show `covered` s later
  double covered = 0;
};
// `coil` is the pipe that is filled, `covered` s go by until it is covered (60 to 86400, else the nearer).
// Refusals of planned_test and test_band; a gauge so high that the working pressure would not reach it.
Result<CoilHold> coil_hold(const LoopTest& test, const LoopVolume& coil, double covered);

}  // namespace underlawn
