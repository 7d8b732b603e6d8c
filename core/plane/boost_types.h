// SPDX-License-Identifier: GPL-3.0-or-later
// Point, Ring, Segment and Box as Boost.Geometry sees them. Only for .cpp files of this room: it is slow to
// compile.
#pragma once

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/register/box.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <boost/geometry/geometries/register/segment.hpp>
#include <vector>

#include "plane/point.h"

BOOST_GEOMETRY_REGISTER_POINT_2D(underlawn::Point, double, boost::geometry::cs::cartesian, x, y)
BOOST_GEOMETRY_REGISTER_BOX(underlawn::Box, underlawn::Point, low, high)
BOOST_GEOMETRY_REGISTER_SEGMENT(underlawn::Segment, underlawn::Point, a, b)

namespace boost::geometry::traits {
template <>
struct tag<underlawn::Ring> {
  using type = ring_tag;
};
template <>
struct point_order<underlawn::Ring> {
  static const order_selector value = counterclockwise;
};
template <>
struct closure<underlawn::Ring> {
  static const closure_selector value = open;
};
}  // namespace boost::geometry::traits
