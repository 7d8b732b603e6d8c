// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/bearing.h"

#include <cmath>
#include <numbers>

namespace underlawn {

QString quarter_bearing(Point along, double north) {
  double degrees = (north - std::atan2(along.y, along.x)) * 180 / std::numbers::pi;
  degrees = std::fmod(std::fmod(degrees, 360) + 360, 360);
  const bool northerly = degrees <= 90 || degrees >= 270;
  const bool easterly = degrees <= 180;
  const double from_meridian = northerly ? (easterly ? degrees : 360 - degrees) : std::abs(180 - degrees);
  const int minutes = static_cast<int>(std::lround(from_meridian * 60));
  return QString("%1 %2°%3' %4")
      .arg(northerly ? "N" : "S")
      .arg(minutes / 60)
      .arg(minutes % 60, 2, 10, QChar('0'))
      .arg(easterly ? "E" : "W");
}

}  // namespace underlawn
