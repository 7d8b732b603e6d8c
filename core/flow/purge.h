// SPDX-License-Identifier: GPL-3.0-or-later
// Flushing a new loop: the flow that carries dirt and air out of every pipe, and whether a cart gives it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "flow/loop_network.h"
#include "flow/pump_duty.h"

namespace underlawn {

inline constexpr double kPurgeTemperature = 10;  // deg C; flushed with water before the antifreeze goes in
inline constexpr double kPurgeHold = 15 * 60;    // s at the purge velocity; ENERGY STAR Homes Northwest and
                                                 // UFGS 15741N

// One way to flush: all circuits together, or one at a time behind valves.
struct PurgeRun {
  double flow = 0;                // m3/s, least that gives the velocity in every pipe
  double head = 0;                // m, at that flow, without the heat pump, which is flushed on its own
  int slowest = 0;                // pipe of the loop that governs
  double circuits_time = 0;       // s to change the slowest circuit's liquid `purge_volumes` times
  double time = 0;                // s: the longer of that and kPurgeHold, times the number of groups
  std::optional<DutyPoint> cart;  // where cart and loop meet; none without a cart
  bool cart_can = false;          // it moves at least `flow`
};

struct Purge {
  PurgeRun together;
  std::optional<PurgeRun> one_by_one;  // home runs only, each closed by its valve at the manifold
};

// The least flow by root finding on the slowest pipe's velocity; it rises with the flow. Refuses a velocity
// not above 0 and what solve_network refuses.
Result<Purge> purge_loop(const LoopNetwork& loop, const FlowWishes& wishes);

// Whether the wishes' cart flushes all circuits together, as purge_loop says it but sooner; true without a
// cart.
bool cart_flushes(const LoopNetwork& loop, const FlowWishes& wishes);

}  // namespace underlawn
