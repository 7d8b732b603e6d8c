// SPDX-License-Identifier: GPL-3.0-or-later
// The crew: who there is, what they get done in an hour, when they work. The usual values are of our own
// choosing, common practice with no source where nothing else is said; a crew that knows its own is right.
#pragma once

#include <string>

#include "dig/machine.h"

namespace underlawn {

inline constexpr double kWorkingDay = 8 * 3600.0;  // s

// A trench narrower than this is not for a bucket but for a chain trencher. m
inline constexpr double kNarrowestBucket = 0.3048;  // 1 ft

struct CrewWishes {
  std::string start;                // "2026-05-18", the first day of digging; empty: days are only counted
  double begins = 7 * 3600.0;       // s after midnight
  double day_length = kWorkingDay;  // s worked a day
  std::string weekdays = "12345";   // days worked, rising; 1 is Monday
  double rain_slack = 0.15;         // of the days worked, kept in reserve for rain

  int excavators = 1;
  int racks = 1;        // coils made at a time, a maker at each
  int coils_ready = 0;  // made before the first day
  int laying_crews = 1;
  int joiners = 1;

  // Of spoil that is trucked off and brought back.
  int trucks = 1;
  double truck_load = 6;        // m3 of loose earth
  double truck_trip = 40 * 60;  // s there and back, loading and tipping included

  Machine loader = usual_loader();
  double trencher = 90;               // s a metre of narrow trench: 40 m an hour
  double hand_crossing = 1.5 * 3600;  // s, a utility found and dug round by hand
  double coil_making = 50;            // s a metre of pipe: loops laid to pitch and tied
  double straight_making = 10;        // s a metre of pipe that has no loops to tie
  double coil_laying = 60;            // s a metre of trench: carried in, spread, held down
  double header_laying = 30;          // s a metre of header or run trench, both pipes
  double joint_making = 480;          // s a fused joint, its cooling included
  double test_filling = 3600;         // s: fill, flush and bring to pressure
  bool operator==(const CrewWishes&) const = default;
};

// m3/s of loose earth by all trucks: trucks x load/trip (Nunnally, Construction Methods and Management, from
// memory: hauling units fewer than the loader keeps busy).
double truck_rate(const CrewWishes& crew);

}  // namespace underlawn
