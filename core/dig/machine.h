// SPDX-License-Identifier: GPL-3.0-or-later
// A machine that digs or fills: how much it moves, how far it reaches and how wide it is.
#pragma once

#include <string>

#include "base/say.h"

namespace underlawn {

inline constexpr const char* kCommonPractice = mark("common practice, no source");
inline constexpr const char* kProductionSource =
    mark("bucket x fill x efficiency x 3600/cycle: toolgrit.com");

// Loose earth moved: heaped bucket x fill x efficiency / cycle (toolgrit.com; Nunnally, Construction Methods
// and Management, from memory, has it by cycles an hour).
struct Machine {
  std::string name;       // stored as typed; of the usual ones in English, translated() where it is shown
  double bucket = 0;      // m3, heaped, > 0
  double fill = 1;        // share of it, 0.60..1.15 (toolgrit.com)
  double cycle = 1;       // s, > 0
  double efficiency = 1;  // share of the hour that the machine works, 0.40..0.83 (toolgrit.com)
  double width = 0;       // m over the tracks or wheels
  double reach = 0;       // m at the ground, from the middle of the swing to the bucket's teeth
  double depth = 0;       // m, the deepest it digs
  bool operator==(const Machine&) const = default;
};

double loose_rate(const Machine& machine);               // m3/s, loose
double bank_rate(const Machine& machine, double swell);  // m3/s, in place: loose/(1 + swell)

// A compact excavator with a quarter-yard bucket over a trench, spoil laid beside it; a compact loader with a
// bucket of half a yard that puts it back. Sizes, reach and cycles: common practice, no source.
inline Machine usual_excavator() {
  return {mark("compact excavator"), 0.1911, 0.90, 20, 0.60, 1.9, 5.8, 3.3};
}
inline Machine usual_loader() {
  return {mark("compact loader"), 0.3823, 1.0, 25, 0.60, 1.7, 0, 0};
}

}  // namespace underlawn
