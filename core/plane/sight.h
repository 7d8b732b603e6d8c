// SPDX-License-Identifier: GPL-3.0-or-later
// A region prepared for being asked about many straight legs.
#pragma once

#include <vector>

#include "plane/region.h"

namespace underlawn {

// A leg may slide along the boundary and touch corners: what reaches beyond by less than this is inside. m.
inline constexpr double kGraze = 1e-3;

class Sight {
 public:
  explicit Sight(const Region& region);

  bool holds(Point p) const;          // inside, or within kGraze of the boundary
  bool sees(Point a, Point b) const;  // the whole leg is inside

  // How a leg passes through: metres of it inside, and how often it comes in from outside.
  struct Passage {
    double inside = 0;
    int entries = 0;
    bool ends_inside = false;
  };
  Passage passage(Point a, Point b, bool starts_inside) const;

  // Corners at which a shortest line can bend: where the region's interior angle is more than half a turn.
  struct Corner {
    Point at, before, after;  // neighbours along the boundary
  };
  const std::vector<Corner>& bending_corners() const { return bending_; }
  const std::vector<Corner>& corners() const { return corners_; }

 private:
  struct Edge {
    Point a, b;
    double low_x, low_y, high_x, high_y;
  };
  void add(const Ring& ring);
  bool parity(Point p) const;
  bool near_boundary(Point p) const;
  // Places 0..1 along the leg where it meets the boundary; false where it properly crosses and `stop` is set.
  bool cuts(Point a, Point b, bool stop, std::vector<double>& out) const;

  std::vector<Edge> edges_;
  std::vector<Corner> corners_, bending_;
};

}  // namespace underlawn
