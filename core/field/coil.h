// SPDX-License-Identifier: GPL-3.0-or-later
// What lies in one trench, one circuit of it.
//
// The flat coil: overlapping loops of pipe laid on the trench floor, and the return pipe that runs back
// along the middle, on them.
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
//
// The upright coil is the same coil stood on its edge in a narrow trench: t is then the height, and the
// return pipe lies on top of the loops or on the floor beside them. Straight patterns have no loops; see
// straight.h.
#pragma once

#include <string>
#include <string_view>

#include "base/quantity.h"
#include "base/result.h"
#include "plane/point.h"

namespace underlawn {

enum class CoilPattern { flat_coil, upright_coil, single_pipe, two_pipes, four_pipes, six_pipes };
inline constexpr int kCoilPatterns = 6;
std::string pattern_name(CoilPattern pattern);
// Without loops: out and back along the trench, once or more.
constexpr bool is_straight(CoilPattern pattern) {
  return pattern != CoilPattern::flat_coil && pattern != CoilPattern::upright_coil;
}

// The pipe in a trench. Of a coil any one of pitch, coil_length and trench_length follows from the other two;
// of a straight pattern either of the two lengths from the other, and there are no loops.
struct Coil {
  double loop_diameter = 0.9144;  // m, D, centre line
  double pitch = 0.4;             // m, p, advance of the trench per loop
  double loops = 0;               // number of loops, N; need not be whole
  double trench_length = 0;       // m: from the trench head to the far end of the last loop: N p + D
  double coil_length = 0;         // m of pipe in the trench, loops and the return pipe to the head together
  double loop_pipe = 0;           // m of it in the loops: N times the length of one
  double return_pipe = 0;         // m of it in the return of a coil: trench_length
  CoilPattern pattern = CoilPattern::flat_coil;
  double level_distance = 0;   // m between levels of a straight pattern, where it has more than one
  double side_distance = 0;    // m between its two sides, where it has two
  bool return_on_top = false;  // upright coil: on top of the loops, not on the floor
  bool laid() const { return coil_length > 0; }
  bool operator==(const Coil&) const = default;
};

// Exact length of one loop: integral of sqrt(R^2 + c^2 - 2 R c cos w) dw, R = D/2, c = p/2pi, which is
// 4 (R + c) E(k) with k^2 = 4 R c/(R + c)^2. m. Longer than pi D, and shorter than pi D + p by about p. For
// D, p >= 0.
double loop_length(double loop_diameter, double pitch);
// The often quoted pi D + p, for comparison only. m.
double loop_length_by_sum(double loop_diameter, double pitch);

enum class CoilUnknown { pitch, coil_length, trench_length };
// What follows in this pattern: where there is no pitch to follow, the coil length does.
constexpr CoilUnknown follows_in(CoilPattern pattern, CoilUnknown asked) {
  return is_straight(pattern) && asked == CoilUnknown::pitch ? CoilUnknown::coil_length : asked;
}

struct CoilRequest {
  CoilUnknown unknown = CoilUnknown::pitch;
  double loop_diameter = 0.9144;  // m
  double pitch = 0;               // m, unless unknown
  double coil_length = 0;         // m, unless unknown
  double trench_length = 0;       // m, unless unknown
  double pipe_diameter =
      0.02667;  // m, outside: loops closer than this would lie on top of one another all the way
  UnitSystem units = UnitSystem::metric;  // of the numbers in a refusal
  CoilPattern pattern = CoilPattern::flat_coil;
  double level_distance = 0.3048;  // m, straight patterns of more than one level
  double side_distance = 0.4572;   // m, straight patterns of two sides
  bool return_on_top = true;       // upright coil
};

inline constexpr double kLargestLoop = 10;      // m, loop diameter
inline constexpr double kLongestTrench = 1000;  // m
inline constexpr double kLongestCoil = 20'000;  // m of pipe

// Refuses what no pipe can be laid to: loop as long as the trench or longer, pitch not above the pipe's
// diameter, pitch of pi D and more (the pipe then never turns back), a coil too short to reach the end and
// back or too long for the closest pitch, pipes of a straight pattern nearer than their diameter, anything
// not a number or beyond the bounds above.
Result<Coil> solve_coil(const CoilRequest& request);

// The angle th, rad, at which the pipe of the loops is used up. For whole loops it is 2 pi N; in a part of a
// loop it comes a little earlier, because a loop begins with its longer half, the one laid in the direction
// of the trench.
double angle_at_stop(const Coil& coil);

// The pipe of a coil from the head to the far end and back to the head, seen flat in trench coordinates: x is
// s, y is t; for an upright coil this is its view from the side. Its length tends to coil_length as
// points_per_loop (at least 4) grows. The return is drawn on the middle line; in the trench it lies beside
// the loops, or on or under them. Empty for a coil of no loops.
Polyline coil_path(const Coil& coil, int points_per_loop);

}  // namespace underlawn
