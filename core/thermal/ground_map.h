// SPDX-License-Identifier: GPL-3.0-or-later
// How warm the ground is at any place and depth, on any day.
//
// The loop's heat reaches a place through the kernel of kernel_nodes.h, with one end of the double integral
// at the place itself:
//     T(p, t) = undisturbed(z, t) - 1/(2 pi^1.5 k) * sum over nodes of  u_n h  W_n(t) H_p(u_n) V_p(u_n)
// H_p the integral of exp(-u^2 rho^2) over all pipe (m), V_p the vertical factor of source less image, W_n
// the heat taken from a metre of pipe (W/m) over the ages 1/(4 a u^2) that the node stands for, h =
// kNodeStep. Place and time are apart: a place is kKernelNodes numbers, a day as many, and a temperature
// their product.
#pragma once

#include <stop_token>
#include <vector>

#include "thermal/kernel_nodes.h"
#include "thermal/step_response.h"

namespace underlawn {

struct GroundSoil {
  double conductivity = 1.5;  // W/(m K), > 0
  double diffusivity = 7e-7;  // m2/s, > 0
  double image_raise = 0;     // m, as in make_step_response
};

// What a watt from every metre of pipe, at the ages of each node, takes from the ground at `p`, `depth` m
// down
// (>= 0): K/(W/m). Loops of a coil are spread evenly along their trench: beside a coil that is good to 2 % of
// the disturbance, 2 m beyond its end to 3 %, in it to 8 % of the mean along a pitch. On a pipe it is the
// wall's.
class GroundReach {
 public:
  GroundReach(const PipesInGround& pipes, const GroundSoil& soil);
  KernelTable at(Point p, double depth) const;

 private:
  struct Strand {
    Segment line;
    double weight = 1;  // m of pipe per m of line
    double depth = 0;
    double smear = 0;  // m: nearer than this nothing is told apart
  };
  using Thing = std::vector<Strand>;
  void add(const Thing& thing, Point p, double depth, KernelTable& out) const;
  GroundSoil soil_;
  std::vector<Thing> near_, far_;  // coils and pipes, in order; a coil seen from afar is fewer strands
  std::vector<std::size_t> legs_;  // how many of the first strands are one, laid in the legs of its trench
};

// W_n at the end of day `day` (0 the first of all) of `daily_heat`, W a day, shared by `pipe` m: W/m.
KernelTable heat_by_node(const std::vector<double>& daily_heat, double pipe, double diffusivity, int day);

// K by which the loop has cooled the place; negative where it has warmed it.
double ground_fall(const KernelTable& reach, const KernelTable& heat);

// Places in rows from the corner, `step` m apart, all at one depth.
struct GroundGrid {
  Point corner;
  double step = 0.5;
  int columns = 0, rows = 0;
  double depth = 0;
  std::vector<KernelTable> reach;  // row by row
};

// Covers `box`, with a step as near to `step` as gives about `most` places at the most. Asked to stop, an
// empty grid.
GroundGrid make_ground_grid(const GroundReach& reach, const Box& box, double depth, double step, int most,
                            std::stop_token stop = {});

}  // namespace underlawn
