// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plane/route.h"
#include "plane/sight.h"

namespace underlawn {

// The line with bends shifted, left out or put in where the router's prices then make it cheaper: beside what
// is dear by the metre the cheapest way bends where no corner is, and a route bends at corners only. Ends
// stay; legs stay in sight within the router's free ground. Never dearer; the same line gives the same.
Polyline with_cheaper_bends(const Polyline& line, const Router& router);

}  // namespace underlawn
