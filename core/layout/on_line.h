// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches whose heads lie on a line that is given, on one side of it or on both.
#pragma once

#include "layout/arrangement.h"
#include "layout/quick_legal.h"

namespace underlawn {

// Arrangements across the line, at most `wanted` trenches of `length` m each, heads between the ends of the
// line; those with the most trenches first, then those nearest the house. Places are found to a millimetre
// from such as are tried every quarter of a metre.
std::vector<Arrangement> arrangements_on_line(const Segment& line, const QuickLegal& legal,
                                              const Wishes& wishes, double length, int wanted,
                                              const Approach& approach);

// rad, 0..pi, of trenches across the line
double bearing_across(const Segment& line);

}  // namespace underlawn
