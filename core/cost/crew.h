// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "dig/crew_wishes.h"
#include "dig/dig_wishes.h"

namespace underlawn {

inline constexpr double kPipeAllowance = 0.05;  // of header and run pipe: cuts, joints, snaking

}  // namespace underlawn
