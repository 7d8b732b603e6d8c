// SPDX-License-Identifier: GPL-3.0-or-later
// The flat coil: overlapping loops of pipe laid on the trench floor, and the return pipe that runs back
// beside them.
//
//   head                                      far end      s along the trench from its head, t to the left
//    |<-------------- N p + D --------------->|            th turns once a loop:
//    |<--- D --->|<-p->|                      |              s = D/2 + p th/2pi - (D/2) cos th
//    ( loop 1    )     ...          ( loop N  )              t = -(D/2) sin th,       0 <= th <= 2 pi N
//
// Pipe enters at the head (s = t = 0) and the loops begin there at once: the first loop's circle touches the
// head. Its centre moves p a loop, so N loops reach from 0 to N p + D; that is the trench length, with
// nothing added for tails. N need not be whole: of a part of a loop the same part of a loop's pipe is
// counted, whichever side of the loop it is (the curve's own pipe differs by up to p/pi). The return pipe is
// as long as the trench: from where the last loop stops on to its turn and straight back to the head. What
// joins the coil to the header is not in these figures.
#pragma once

#include <string_view>

#include "base/quantity.h"
#include "base/result.h"
#include "plane/point.h"

namespace underlawn {

enum class CoilPattern { flat_coil };
std::string_view pattern_name(CoilPattern pattern);

// A flat coil in a trench. Any one of pitch, coil_length and trench_length follows from the other two.
struct Coil {
  double loop_diameter = 0.9144;  // m, D, centre line
  double pitch = 0.4;             // m, p, advance of the trench per loop
  double loops = 0;               // number of loops, N; need not be whole
  double trench_length = 0;       // m: from the trench head to the far end of the last loop: N p + D
  double coil_length = 0;         // m of pipe in the trench, loops and the return pipe to the head together
  double loop_pipe = 0;           // m of it in the loops: N times the length of one
  double return_pipe = 0;         // m of it in the return: trench_length
  bool operator==(const Coil&) const = default;
};

// Exact length of one loop: integral of sqrt(R^2 + c^2 - 2 R c cos w) dw, R = D/2, c = p/2pi, which is
// 4 (R + c) E(k) with k^2 = 4 R c/(R + c)^2. m. Longer than pi D, and shorter than pi D + p by about p. For
// D, p >= 0.
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
  double pipe_diameter =
      0.02667;  // m, outside: loops closer than this would lie on top of one another all the way
  UnitSystem units = UnitSystem::metric;  // of the numbers in a refusal
};

inline constexpr double kLargestLoop = 10;      // m, loop diameter
inline constexpr double kLongestTrench = 1000;  // m
inline constexpr double kLongestCoil = 20'000;  // m of pipe

// Refuses what no pipe can be laid to: loop as long as the trench or longer, pitch not above the pipe's
// diameter, pitch of pi D and more (the pipe then never turns back), a coil too short to reach the end and
// back or too long for the closest pitch, anything not a number or beyond the bounds above.
Result<Coil> solve_coil(const CoilRequest& request);

// The pipe of a coil from the head to the far end and back to the head, in trench coordinates: x is s, y is
// t. Its length tends to coil_length as points_per_loop (at least 4) grows. The return is drawn on the middle
// line; in the trench it lies beside the loops. Empty for a coil of no loops.
Polyline coil_path(const Coil& coil, int points_per_loop);

}  // namespace underlawn
