// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/plan.h"

namespace underlawn {

// The parts that what is worked out beside the plan follows from: not its title, nor what was accepted.
inline bool same_loop(const Plan& a, const Plan& b) {
  return a.site == b.site && a.ground == b.ground && a.wishes == b.wishes && a.thermal == b.thermal &&
         a.flow == b.flow && a.units == b.units;
}

}  // namespace underlawn
