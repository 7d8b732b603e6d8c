// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/triangles.h"

#include <boost/polygon/voronoi.hpp>
#include <cmath>
#include <cstdint>

namespace underlawn {

namespace {

using Site = boost::polygon::point_data<std::int32_t>;
using Diagram = boost::polygon::voronoi_diagram<double>;

constexpr double kUnits = 1000;  // a metre

std::int32_t whole(double v) {
  return static_cast<std::int32_t>(std::lround(v * kUnits));
}

// Corners of the circle round a vertex of the diagram, in turn.
std::vector<int> round_vertex(const Diagram::vertex_type& vertex) {
  std::vector<int> corners;
  const auto* first = vertex.incident_edge();
  const auto* edge = first;
  do {
    corners.push_back(static_cast<int>(edge->cell()->source_index()));
    edge = edge->rot_next();
  } while (edge != first);
  return corners;
}

double twice_area(const std::vector<Point>& p, const Triangle& t) {
  const auto at = [&](int k) { return p[static_cast<std::size_t>(t.corners[static_cast<std::size_t>(k)])]; };
  return cross(at(1) - at(0), at(2) - at(0));
}

}  // namespace

std::vector<Triangle> triangles_between(const std::vector<Point>& points) {
  std::vector<Site> sites;
  sites.reserve(points.size());
  for (Point p : points) sites.emplace_back(whole(p.x), whole(p.y));
  Diagram diagram;
  boost::polygon::construct_voronoi(sites.begin(), sites.end(), &diagram);
  std::vector<Triangle> all;
  for (const auto& vertex : diagram.vertices()) {
    const std::vector<int> corners = round_vertex(vertex);
    for (std::size_t k = 2; k < corners.size(); ++k) {
      Triangle t{{corners[0], corners[k - 1], corners[k]}};
      const double twice = twice_area(points, t);
      if (twice < 0) std::swap(t.corners[1], t.corners[2]);
      if (twice != 0) all.push_back(t);
    }
  }
  return all;
}

}  // namespace underlawn
