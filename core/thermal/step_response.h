// SPDX-License-Identifier: GPL-3.0-or-later
// R(t): how much warmer the pipe wall is, in the mean over all pipe, when every metre of pipe gives 1 W from
// t = 0.
#pragma once

#include <vector>

#include "field/coil.h"
#include "plane/point.h"
#include "thermal/kernel_nodes.h"

namespace underlawn {

// A trench with a flat coil.
struct CoilInGround {
  Point head, end;  // middle line
  Coil coil;
  double return_offset = 0;       // m, to the left of head-to-end
  double depth = 1.8;             // m from the ground to the pipe's axis
  double pipe_radius = 0.01335;   // m, outside
  std::vector<Point> bends = {};  // of the middle line, from head to end
};

// A trench with an upright coil. It enters a field by lay_upright in upright_kernel.h.
struct UprightInGround {
  Point head, end;
  Coil coil;
  double depth = 1.8;             // m from the ground to the lowest pipe's axis
  double pipe_radius = 0.01335;   // m, outside
  std::vector<Point> bends = {};  // of the middle line, from head to end
  double return_depth() const { return coil.return_on_top ? depth - coil.loop_diameter : depth; }
  double return_offset() const { return 2 * pipe_radius; }  // it touches the loops' side
};

// A straight piece of pipe: single, two, four or six of them make the straight patterns, header and run.
struct PipeInGround {
  Segment line;
  double depth = 1.5;
  double pipe_radius = 0.01335;
  double weight =
      1;           // metres of pipe per metre of line: not 1 where it stands for a part of an upright coil,
  int owner = -1;  // whose place in `upright` this is: its parts meet one another by its own kernel
  double pipe() const { return weight * distance(line.a, line.b); }  // m
};

struct PipesInGround {
  std::vector<CoilInGround> coils;
  std::vector<PipeInGround> pipes;
  std::vector<UprightInGround> upright;  // as themselves; what others feel of them is among the pipes
};

double total_pipe(const PipesInGround& pipes);  // m

class PairKernels;

// The geometry's part of the answer, for any k, a and time. `image_raise`: m by which the sink plane lies
// above the ground for the resistance of grass and air, k times 0.04 (bare, windy) to 0.12 m2 K/W (long
// grass).
class StepResponse {
 public:
  // k R at t = 0 is 0. conductivity k > 0 in W/(m K), diffusivity a > 0 in m2/s, t >= 0 in s; m K/W.
  double operator()(double conductivity, double diffusivity, double t) const;
  // The limit t to infinity, m K/W.
  double steady(double conductivity) const;

 private:
  friend StepResponse make_step_response(const PipesInGround&, const std::vector<KernelTable>&, double,
                                         PairKernels&);
  explicit StepResponse(const KernelTable& k_of_u, double pipe);
  KernelTable value_{};  // integrand in ln u
  KernelTable slope_{};
  KernelTable above_{};  // integral from each node to infinity
};

// `self`: coil_kernel of each coil, in order, then upright_kernel of each upright one; coils of one shape
// share one table, computed once. `pairs` is brought up to date; kept from one call to the next, only what
// moved is computed.
StepResponse make_step_response(const PipesInGround& pipes, const std::vector<KernelTable>& self,
                                double image_raise, PairKernels& pairs);
StepResponse make_step_response(const PipesInGround& pipes, const std::vector<KernelTable>& self,
                                double image_raise);

}  // namespace underlawn
