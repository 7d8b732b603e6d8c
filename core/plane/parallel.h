// SPDX-License-Identifier: GPL-3.0-or-later
// Lines and outlines a constant distance beside others.
#pragma once

#include "plane/point.h"

namespace underlawn {

// The line `left` m to the left of the other (negative: to its right), corners mitred. A corner that turns by
// more than kMitredTurn is cut off square. Empty for less than two distinct points.
Polyline parallel_line(const Polyline& line, double left);

// The outline `out` m outside the other (negative: inside), corners mitred where they can be, else as
// `grown` rounds them; counter-clockwise. Empty where nothing is left or the ring is none.
Ring parallel_ring(const Ring& ring, double out);

// The strip `wide` m wide along edge `i` of the ring, on its inside, ending on the neighbouring edges. Empty
// where there is no such edge, it has no length, or the strip leaves the ring.
Ring strip_inside(const Ring& ring, std::size_t i, double wide);

}  // namespace underlawn
