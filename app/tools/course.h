// SPDX-License-Identifier: GPL-3.0-or-later
// What a person types while drawing, made into a point.
//
//   31.5        length along the pointer             12'-6 1/2"   the same, any unit
//   31.5<90     length, angle counter-clockwise from the drawing's +x, degrees
//   120 N45E    length, bearing from north; N 45°30'15" E, N45-30-15E, 120 E too; either order
//   @10,5       relative to the last point           10,5         on the drawing, where there is no last
//   point #10,5       on the drawing, always               10;5         where the comma is the decimal mark
#pragma once

#include <QString>
#include <optional>
#include <string_view>

#include "base/quantity.h"
#include "base/result.h"
#include "plane/point.h"

namespace underlawn {

struct CourseFrame {
  std::optional<Point> from;          // the last point
  std::optional<Point> toward;        // where the pointer is: gives a bare length its direction
  double north = 1.5707963267948966;  // rad from +x
  UnitSystem units = UnitSystem::us;
};

// Error: what could not be read, with an example that can.
Result<Point> typed_place(std::string_view text, const CourseFrame& frame);

// A direction alone, which the next points are to lie in: "<45", "N45E", "N 45-30 E". Unit vector; none where
// the text is no such thing.
std::optional<Point> typed_direction(std::string_view text, double north);

// Quadrant bearing to the second of arc, "N 45°30'15" E", of a direction that is not zero.
QString bearing_text(Point along, double north);

}  // namespace underlawn
