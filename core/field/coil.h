// SPDX-License-Identifier: GPL-3.0-or-later
// The flat coil: overlapping loops of pipe laid on the trench floor, and the return pipe that runs back beside them.
// The centre line is  x = p th/2pi + (D/2) cos th,  y = (D/2) sin th.
#pragma once

#include <string_view>

#include "base/result.h"

namespace underlawn {

enum class CoilPattern { flat_coil };
std::string_view pattern_name(CoilPattern pattern);

// A flat coil in a trench. Any one of pitch, coil_length and trench_length follows from the other two.
struct Coil {
  double loop_diameter = 0.9144;  // m, D, centre line
  double pitch = 0.4;             // m, p, advance of the trench per loop
  double loops = 0;               // number of loops; need not be whole
  double trench_length = 0;       // m: from the trench head to the far end of the last loop: (loops) p + D
  double coil_length = 0;         // m of pipe in the trench, loops and the return pipe to the head together
  double loop_pipe = 0;           // m of it in the loops
  double return_pipe = 0;         // m of it in the return
  bool operator==(const Coil&) const = default;
};

// Exact length of one loop: integral of sqrt(R^2 + c^2 - 2 R c cos w) dw, R = D/2, c = p/2pi, which is
// 4 (R + c) E(k) with k^2 = 4 R c/(R + c)^2. m. Longer than pi D, and shorter than pi D + p by about p.
double loop_length(double loop_diameter, double pitch);
// The often quoted pi D + p, for comparison only. m.
double loop_length_by_sum(double loop_diameter, double pitch);

enum class CoilUnknown { pitch, coil_length, trench_length };

struct CoilRequest {
  CoilUnknown unknown = CoilUnknown::pitch;
  double loop_diameter = 0.9144;  // m
  double pitch = 0;               // m, unless unknown
  double coil_length = 0;         // m, unless unknown
  double trench_length = 0;       // m, unless unknown
};

// Refuses what no pipe can be laid to: loop wider than the trench length, pitch not above the pipe's diameter,
// a coil too short to reach the end and back.
Result<Coil> solve_coil(const CoilRequest& request);

}  // namespace underlawn
