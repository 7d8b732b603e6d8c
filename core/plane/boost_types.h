// SPDX-License-Identifier: GPL-3.0-or-later
// The plane's points in Boost.Geometry's clothes. Private to this room: Boost.Geometry is slow to compile.
#pragma once

#include <boost/geometry/algorithms/area.hpp>
#include <boost/geometry/algorithms/centroid.hpp>
#include <boost/geometry/algorithms/covered_by.hpp>
#include <boost/geometry/algorithms/distance.hpp>
#include <boost/geometry/algorithms/perimeter.hpp>
#include <boost/geometry/algorithms/within.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <boost/geometry/geometries/ring.hpp>
#include <boost/geometry/geometries/segment.hpp>
#include <boost/geometry/strategies/strategies.hpp>

#include "plane/point.h"

BOOST_GEOMETRY_REGISTER_POINT_2D(underlawn::Point, double, boost::geometry::cs::cartesian, x, y)

namespace underlawn {

namespace bg = boost::geometry;
using BoostRing = bg::model::ring<Point, false, false>;  // counter-clockwise, open as ours are
using BoostLine = bg::model::linestring<Point>;

inline BoostRing boost_ring(const Ring& ring) {
  return {ring.begin(), ring.end()};
}
inline BoostLine boost_line(const Polyline& line) {
  return {line.begin(), line.end()};
}

}  // namespace underlawn
