// SPDX-License-Identifier: GPL-3.0-or-later
// What the designer asks of the loop.
#pragma once

#include <string>
#include <vector>

#include "field/coil.h"
#include "plane/point.h"

namespace underlawn {

// A trench whose place is given: it is taken as it is.
struct GivenTrench {
  Point head, end;
  double depth = 0;        // m; 0: Wishes::trench_depth
  double coil_length = 0;  // m of pipe in it; 0: as the wishes' pitch gives for its length
  bool operator==(const GivenTrench&) const = default;
};

struct Wishes {
  CoilPattern pattern = CoilPattern::flat_coil;
  std::string pipe = "3/4 in DR 11";           // name in pipe_sizes(): the coils
  std::string header_pipe = "1-1/4 in DR 11";  // header and supply run
  CoilUnknown unknown = CoilUnknown::pitch;    // which of the next three follows from the other two
  double pitch = 0.4064;                       // m
  double coil_length = 243.84;                 // m, return pipe included: 800 ft
  double trench_length = 30.48;                // m: 100 ft
  double loop_diameter = 0.9144;               // m: 3 ft
  int circuits = 4;                            // one coil each
  double trench_width = 0.9144;                // m: 3 ft
  double trench_depth = 1.8288;                // m: 6 ft
  double spacing = 3.6576;                     // m between middle lines of neighbouring trenches: 12 ft
  double end_gap = 1.8288;    // m between trenches that lie end to end, or side of one and end of another
  double run_width = 0.6096;  // m, header and run trench: 2 ft
  double run_depth = 1.5240;  // m: 5 ft
  double bedding = 0.1524;    // m of sand round the pipe: 6 in
  bool coil_in_run = true;    // use the supply trench for a coil where it is long enough
  double level_distance = 0.3048;  // m between levels of straight pipe: 1 ft
  double side_distance = 0.4572;   // m between its two sides: 18 in
  bool return_on_top = true;       // of an upright coil; else on the floor
  std::vector<GivenTrench> given;  // where there are any, no other trenches are placed
  bool operator==(const Wishes&) const = default;
};

// Floor width usual for a pattern, m: as wide as the loops; a chain trencher's 6 in for what stands or lies
// in one plane; two sides of pipe need a bucket. Common practice, no source, but for the upright coil's 6 in:
// Handbook of Energy Management, "spiral loops".
constexpr double usual_trench_width(CoilPattern pattern) {
  if (pattern == CoilPattern::flat_coil) return 0.9144;
  return pattern == CoilPattern::upright_coil || pattern == CoilPattern::single_pipe ? 0.1524 : 0.6096;
}

}  // namespace underlawn
