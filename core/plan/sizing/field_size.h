// SPDX-License-Identifier: GPL-3.0-or-later
// A field of one size and what the water in it comes to.
#pragma once

#include "plan/plan.h"

namespace underlawn {

struct FieldSize {
  int circuits = 0;
  double coil_pipe = 0;  // m, of all coils together
  double trench = 0;     // m, of all coil trenches together
  double coldest = 0;    // deg C entering, over the design life; 1e9 where the unit never runs
  double warmest = 0;    // deg C; -1e9 likewise
  double seasonal = 0;   // (heat + cooling met) over all electricity, last year; 0 where there is none
  double bank = 0;       // m3 dug, sides vertical, in place
  bool placed = false;   // laid out on the lot; else parallel trenches on open ground
};

inline bool holds_cold(const FieldSize& f, const ThermalWishes& w) {
  return f.coldest >= w.coldest_allowed;
}
inline bool holds_warm(const FieldSize& f, const ThermalWishes& w) {
  return f.warmest <= w.warmest_allowed;
}
inline bool holds(const FieldSize& f, const ThermalWishes& w) {
  return holds_cold(f, w) && holds_warm(f, w);
}

}  // namespace underlawn
