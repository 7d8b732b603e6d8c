// SPDX-License-Identifier: GPL-3.0-or-later
// Other ways to lay the loop, different in kind, each solved in full and put beside the plan's own.
#pragma once

#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

enum class WayKind {
  as_planned,
  other_side,       // the field beyond another wall of the house
  other_direction,  // trenches at least kOtherDirection off
  groups,           // two fields with headers of their own; one, where there are more
  run_coil,         // a coil in the supply trench, or none
  fewer_deeper,
  upright,  // upright coils in narrow trenches; flat ones, where they stand
  metres,   // most metres of trench
};
std::string_view way_kind_name(WayKind kind);  // "other_side", for files

inline constexpr double kOtherDirection = 0.5235987755982988;  // rad: 30 deg
inline constexpr std::size_t kMostWays = 5;                    // beside the plan's own

struct Way {
  WayKind kind = WayKind::as_planned;
  std::string sentence;  // in the plan's units: "3 circuits 8 ft deep instead of 4 at 6 ft"
  Wishes wishes;         // a plan with these solves to this layout
  Layout layout;
  int circuits = 0;
  double trench = 0;                       // m, of all coil trenches
  double cost = 0;                         // currency, sides vertical
  double bank = 0;                         // m3 dug, sides vertical, in place
  double days = 0;                         // working days open on the lot
  double lawn = 0;                         // m2 torn up
  std::optional<double> coldest, warmest;  // deg C entering over the design life; none: not known
  bool holds = false;                      // both known and within the plan's limits
  double short_by = 0;  // K, the larger of what the two are beyond their limits; 0 where it holds
};

// 0..1 and what is being tried; called on the thread of ways_of.
using WaysProgress = std::function<void(double, const std::string&)>;

// The plan's own first, then at most kMostWays others: those that hold the limits by rising cost, then the
// rest by how little they miss them. Left out is what lays nothing, most metres that are no more, fewer
// circuits than planned that do not hold (unless there is nothing else), and what
// comes to the same trenches within a metre, of the same section and coil, as one before it. Empty where the
// plan's troubles stop the layout, or when asked to stop. Deterministic.
std::vector<Way> ways_of(const Plan& plan, const WaysProgress& progress = {}, std::stop_token stop = {});

// Whether the coldest and warmest fluid are known and within the limits.
bool water_holds(const Outcome& outcome, const ThermalWishes& limits);

// Same trenches: as many, each with its ends within `within` of one of the other's (head and end may be
// swapped), and the same width, depth and pipe.
bool same_trenches(const Layout& a, const Layout& b, double within = 1);

}  // namespace underlawn
