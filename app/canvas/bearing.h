// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "plane/point.h"

namespace underlawn {

// "N 87°39' W": a quarter of the compass, as on a survey. `north`: rad, the direction of north.
QString quarter_bearing(Point along, double north);

}  // namespace underlawn
