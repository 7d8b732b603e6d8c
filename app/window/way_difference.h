// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/plan.h"
#include "plan/ways.h"

class QWidget;

namespace underlawn {

// What two ways come to, side by side, and how the second differs from the first. The caller owns it.
QWidget* way_difference(const Way& a, const Way& b, const Plan& plan);

}  // namespace underlawn
