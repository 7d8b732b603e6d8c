// SPDX-License-Identifier: GPL-3.0-or-later
// How much pipe each end of a coil has beyond its trench head, up to the joint with the header.
//
//   people in the header's trench               nobody goes down: joints are made above the ground
//   ______        _______                       ______   o==  kOverEdge on the ground   _______
//         |o=tail |                                   |  |                             |
//         |____.--' step                              |__|__ . . depth at the head     |
//              `~~~~ coil                                `~~~~ coil
//
// The joint is fused at the pipe's very end, so all of it stays in the ground and liquid goes through it: it
// is cut, bought, filled and counted in the head loss. It is not counted as pipe that draws heat, like the
// tail before (field/coil.h): near the header, beside its neighbour, it gives little, and a loop that is
// reckoned without it is on the safe side.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// m of a pipe end that have to lie on the ground beside the edge to be joined there. Our own, no source.
inline constexpr double kOverEdge = 0.6;

struct CoilEnd {
  double tail = 0;         // m, as entered: from the trench head to the header
  double rise = 0;         // m on top of it: up over the edge, or what the step takes more than the tail has
  bool over_edge = false;  // joined above the ground
  double length() const { return tail + rise; }
};

// m from the ground to the floor at the head that is deepest; 0 without trenches.
double deepest_head(const Layout& layout, const DigPlan& dig);

// One length for all ends, by the deepest head, so that all coils are cut alike. `dig` may be without floors:
// then the trenches' own depths count.
CoilEnd coil_end(const Plan& plan, const Layout& layout, const DigPlan& dig);

// The plan's wishes with the ends as they are cut for tails: what the loop is solved and counted with.
FlowWishes flow_as_cut(const Plan& plan, const Layout& layout, const DigPlan& dig);

// m: the coil of that trench with both ends, as it is cut; no spare. 0 where there is no such trench.
double coil_cut(const Plan& plan, const Outcome& outcome, int trench);

}  // namespace underlawn
