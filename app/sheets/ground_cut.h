// SPDX-License-Identifier: GPL-3.0-or-later
// A cut through the ground in the four seasons: how warm it is by depth, where the pipe lies, and how warm
// the water in it is.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// Untouched ground by Kusuda & Achenbach, outdoor air and the pipe's water as the month's mean, the
// water in the last year of the design life where temperatures are solved. `text` in device units. Leaves the
// area empty where the outcome has no surroundings.
void paint_ground_cut(QPainter& painter, const Plan& plan, const Outcome& outcome, const QRectF& area,
                      double text);

// What it shows, and what for.
QString ground_cut_words(const Outcome& outcome);

}  // namespace underlawn
