// SPDX-License-Identifier: GPL-3.0-or-later
// The robust integer clipper (Clipper 6.4.2) behind Region. Only for .cpp files of this room.
//
// Every coordinate is a whole number of kGrid steps there. Crossings are rounded to the grid once, after the
// topology was decided, so no obstacle is lost for being flush with another.
#pragma once

#include <polyclipping/clipper.hpp>

#include "plane/region.h"

namespace underlawn {

// |x| and |y| the clipper is given; ten times the plan, so that what is grown beyond its rim still fits. m
inline constexpr double kClipReach = 10 * kLargestPlan;

// Throws std::invalid_argument for a coordinate that is not finite or beyond kClipReach: rings from outside
// go through checked_ring first.
ClipperLib::Path path_of(const Ring& ring);
void append_paths(const Region& r, ClipperLib::Paths& out);  // outers counter-clockwise, holes clockwise
ClipperLib::Paths paths_of(const Region& r);

// Operation with non-zero winding for both sides. Slivers thinner than the grid can tell apart are left out
// where that makes free ground smaller: loose polygons of a difference or intersection, holes of a union.
Region clip(ClipperLib::ClipType type, const ClipperLib::Paths& subject, const ClipperLib::Paths& other);

}  // namespace underlawn
