// SPDX-License-Identifier: GPL-3.0-or-later
// What a crew gets done in an hour. The rates are constants of our own choosing, each with where it comes
// from; a crew that knows its own is right.
#pragma once

#include <string_view>

namespace underlawn {

inline constexpr const char* kCommonPractice = "common practice, no source";

inline constexpr double kWorkingDay = 8 * 3600.0;  // s; common practice, no source

// Loose earth moved: heaped bucket x fill x efficiency / cycle (toolgrit.com; Nunnally, Construction Methods
// and Management, from memory, has it by cycles an hour).
struct Machine {
  std::string_view name;
  double bucket = 0;      // m3, heaped, > 0
  double fill = 1;        // share of it, 0.60..1.15 (toolgrit.com)
  double cycle = 1;       // s, > 0
  double efficiency = 1;  // share of the hour that the machine works, 0.40..0.83 (toolgrit.com)
  bool operator==(const Machine&) const = default;
};
inline constexpr const char* kProductionSource = "bucket x fill x efficiency x 3600/cycle: toolgrit.com";

double loose_rate(const Machine& machine);               // m3/s, loose
double bank_rate(const Machine& machine, double swell);  // m3/s, in place: loose/(1 + swell)

// A compact excavator with a quarter-yard bucket over a trench, spoil laid beside it; a compact loader with a
// bucket of half a yard that puts it back. Sizes and cycles: common practice, no source.
inline constexpr Machine kExcavator{"compact excavator", 0.1911, 0.90, 20, 0.60};
inline constexpr Machine kLoader{"compact loader", 0.3823, 1.0, 25, 0.60};

// A trench narrower than this is not for a bucket but for a chain trencher. m, s/m; common practice, no
// source.
inline constexpr double kNarrowestBucket = 0.3048;  // 1 ft
inline constexpr double kTrencher = 90;             // s a metre of trench: 40 m an hour

// Common practice, no source, all of them.
inline constexpr double kHandCrossing = 1.5 * 3600;  // s, a utility found and dug round by hand
inline constexpr double kCoilMaking = 50;            // s a metre of pipe: loops laid to pitch and tied
inline constexpr double kStraightLaying = 10;        // s a metre of pipe that has no loops to tie
inline constexpr double kCoilLaying = 60;            // s a metre of trench: carried in, spread, held down
inline constexpr double kHeaderLaying = 30;          // s a metre of header or run trench, both pipes
inline constexpr double kJointMaking = 480;          // s a fused joint, its cooling included
inline constexpr double kTestFilling = 3600;         // s: fill, flush and bring to pressure
inline constexpr double kPipeAllowance = 0.05;       // of header and run pipe: cuts, joints, snaking

}  // namespace underlawn
