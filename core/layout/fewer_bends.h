// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plane/sight.h"

namespace underlawn {

// The shortest line hugs a rounded clearance by many short legs. A crew stakes one corner instead: each such
// string of legs shorter than kShortLeg becomes the one or two corners at which its neighbours, prolonged,
// meet, where those lie in free ground. First and last point stay; what cannot be mended stays as it is.
inline constexpr double kShortLeg = 2.5;  // m
Polyline with_fewer_bends(const Polyline& line, const Sight& free);

}  // namespace underlawn
