// SPDX-License-Identifier: GPL-3.0-or-later
// Coils in trenches that bend: a straight piece of coil in every leg. The loops go on from one leg to the
// next where their centre passes the bend, so that no pipe is lost or laid twice; those next to a bend reach
// out over it.
#pragma once

#include <vector>

#include "field/coil.h"
#include "thermal/kernel_nodes.h"
#include "thermal/step_response.h"

namespace underlawn {

// A leg of a trench as an axis of its own: what lies x along the trench and y to its left is at
// origin + x along + y left.
struct LegAxis {
  Point origin, along;
  double from = 0, to = 0;  // m along the trench; the first and last leg go on without end
  Point on_lot(Point p) const { return origin + p.x * along + p.y * left_normal(along); }
};
std::vector<LegAxis> leg_axes(Point head, const std::vector<Point>& bends, Point end);

// A straight strand along the trench from x to x, cut into pieces for its legs: `centre` is what is added to
// x to say by which place along the trench a piece goes with a leg.
struct LegPiece {
  LegAxis leg;
  double from = 0, to = 0;  // m along the trench
};
std::vector<LegPiece> cut_at_bends(double from, double to, double centre, const std::vector<LegAxis>& legs);

// The strands of coil_strands on the lot, with metres of pipe per metre of line; the return pipe's first.
struct LaidStrand {
  Segment line;
  double weight = 1;
};
std::vector<LaidStrand> laid_strands(const CoilInGround& coil, int around);

// What its bends change in coil_kernel or upright_kernel of the same coil laid straight: twice the sum over
// pairs of legs of what they feel of one another as they lie, less what they would feel laid straight on.
// Both by midpoints of equal pieces of pipe, so that a bend of no angle changes nothing. Costs up to a tenth
// of a second.
KernelTable change_by_bends(const CoilInGround& coil);
KernelTable change_by_bends(const UprightInGround& coil, double image_raise);

}  // namespace underlawn
