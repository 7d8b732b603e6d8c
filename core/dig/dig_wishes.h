// SPDX-License-Identifier: GPL-3.0-or-later
// What the designer asks of the digging itself: how the sides are kept from caving in, where the earth goes,
// which way the machine comes.
#pragma once

#include <optional>

#include "dig/machine.h"
#include "plane/point.h"

namespace underlawn {

// How the sides of a trench stand. 29 CFR 1926.652(a)(1) asks for a protective system wherever an employee is
// in the trench, but in stable rock and below 5 ft.
enum class Sides {
  stay_out,  // vertical, and nobody goes in: the coil is let down from above
  slope,     // laid back: Table B-1 by soil class, or the designer's own slope
  shield,    // vertical, people only inside a trench shield
  shoring,   // vertical, held by shores
};
inline constexpr int kSides = 4;

// Where dug earth goes.
enum class Haul {
  none,    // all of it lies beside its trench
  needed,  // what finds no room on the lot is trucked off and brought back
  all,
};

// Spoil and machines keep 2 ft from the edge: 29 CFR 1926.651(j)(2). m
inline constexpr double kSpoilKeptOff = 0.6096;

struct DigWishes {
  Sides coil_sides = Sides::stay_out;  // of coil trenches
  Sides run_sides = Sides::shield;     // of header and run, where joints are made
  std::optional<double> slope;         // horizontal per vertical; without it Table B-1's for the soil class
  double spoil_off = kSpoilKeptOff;    // m from the edge of the trench to the foot of the heap
  Haul haul = Haul::none;
  std::optional<Point> access;   // on the side of the lot where machines come in; without it over the drive
  std::optional<Point> laydown;  // where pipe is laid down and coils are made; without it a place is found
  Machine excavator = usual_excavator();
  bool operator==(const DigWishes&) const = default;
};

}  // namespace underlawn
