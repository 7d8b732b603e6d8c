// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/plan.h"
#include "thermal/surroundings.h"

namespace underlawn {

// Why no field at this depth can hold the limits, however large: the untouched ground at the pipe is colder
// than the coldest water allowed in an hour of heating, or warmer than the warmest in one of cooling. Water
// that takes heat from the ground is colder than it.
std::optional<Trouble> beyond_the_ground(const Plan& plan, const Surroundings& surroundings);

}  // namespace underlawn
