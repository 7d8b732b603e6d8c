// SPDX-License-Identifier: GPL-3.0-or-later
// The fluid in the loop, as far as heat is concerned.
#pragma once

#include "base/result.h"
#include "pipe/fluid.h"
#include "pipe/pipe_size.h"

namespace underlawn {

struct Circulation {
  double heat_flow_rate = 0;    // W/K: mass flow x specific heat while the unit runs
  double fluid_resistance = 0;  // m K/W from the outside of the pipe to the fluid, mean over all pipe
  double reynolds = 0;          // in a coil
  double pump_power = 0;        // W of the circulator while the unit runs
  bool operator==(const Circulation&) const = default;
};

// Wall and film of one pipe at a flow (m3/s, > 0): Churchill's friction and Gnielinski's Nusselt number.
struct Film {
  double resistance = 0;  // m K/W
  double reynolds = 0;
};
Film film_in(const PipeSize& size, const FluidProperties& fluid, double flow);

}  // namespace underlawn
