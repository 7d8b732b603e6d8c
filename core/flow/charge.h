// SPDX-License-Identifier: GPL-3.0-or-later
// How high to charge a closed loop, so that neither winter nor summer takes its pressure out of bounds.
//
// What is in the loop stays in it: V p (c/(E m(T)) + 1/K) + (liquid in the tank) + (what the loop draws) is
// the same in every season. A season's pressure is told with the modulus after half a year of creep, the
// highest with that after a month only, when the pipe is still stiffer; at the fill with that of `settling`.
// m(T) is modulus_multiplier. Assumed: nothing is made up after the charge.
#pragma once

#include <optional>

#include "flow/expansion.h"

namespace underlawn {

struct ChargeWishes {
  double least_at_top = 70e3;     // Pa gauge at the highest point, any season (common practice, no source)
  double most_at_bottom = 700e3;  // Pa gauge at the lowest point, any season: what the weakest part bears
  double top_above_gauge = 0;     // m, 0..100
  double bottom_below_gauge = 0;  // m, 0..300
  double tank = 0;                // m3, expansion tank; 0: none
  // Pa gauge of the tank's gas before liquid comes in, 0..1 MPa; else the least pressure wanted at the gauge.
  std::optional<double> tank_precharge;
  double settling = 86400;  // s under pressure before the charge is set for good, 60 to 3e7
};

struct Charge {
  double at_fill = 0, winter = 0, summer = 0;  // Pa gauge at the gauge
  double highest = 0;        // Pa gauge at the gauge, the season coming within a month of the fill
  double tank = 0;           // m3: the one there is, or the one needed
  bool tank_needed = false;  // none was given, and without one no charge will do
  bool vacuum = false;       // in some season the loop draws all it has and stands at a vacuum
};

// Pressures that follow from charging to `at_fill` (0..5 MPa). Refused: wishes out of range, volume_change's,
// seasons out of order, temperatures beyond modulus_multiplier.
Result<Charge> charge_to(const ExpansionLoop& loop, const Seasons& seasons, const ChargeWishes& wishes,
                         double at_fill);

// The least charge that keeps `least_at_top` in every season. Where it comes above `most_at_bottom`: with the
// least tank that mends that if none was given, else refused. Refused too: bounds that leave no room, no tank
// up to the loop's own volume is enough.
Result<Charge> least_charge(const ExpansionLoop& loop, const Seasons& seasons, const ChargeWishes& wishes);

}  // namespace underlawn
