// SPDX-License-Identifier: GPL-3.0-or-later
// A cut through the ground in the four seasons: how warm it is by depth, and where the pipe lies.
#pragma once

#include <QPainter>
#include <QRectF>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// Untouched ground by Kusuda & Achenbach, outdoor air as the month's mean. `text` in device units. Leaves the
// area empty where the outcome has no surroundings.
void paint_ground_cut(QPainter& painter, const Plan& plan, const Outcome& outcome, const QRectF& area,
                      double text);

}  // namespace underlawn
