// SPDX-License-Identifier: GPL-3.0-or-later
// A region prepared for being asked about many straight legs.
#pragma once

#include <vector>

#include "plane/edge_grid.h"
#include "plane/region.h"

namespace underlawn {

// Boundaries count as inside, and so does what lies beyond one by no more than kSamePlace: a leg may slide
// along an edge, touch corners and pass between areas that touch. At a shallow angle it can reach twice that
// far before the edge is told from the leg.
class Sight {
 public:
  explicit Sight(const Region& region);

  bool holds(Point p) const;          // inside, or within kSamePlace of the boundary
  bool sees(Point a, Point b) const;  // the whole leg is inside
  Point nearest(Point p) const;  // p itself if held, else the nearest of the boundary; p where there is none

  // How a leg passes through: metres of it inside, and how often it comes in from outside. The boundary is
  // outside here: along an edge nothing is entered.
  struct Passage {
    double inside = 0;  // m
    int entries = 0;
    bool ends_inside = false;
  };
  Passage passage(Point a, Point b, bool starts_inside) const;
  bool strictly_holds(Point p) const;  // inside by more than kSamePlace

  struct Corner {
    Point at, before, after;  // neighbours along the boundary
  };
  // Corners where the region's inside angle is more than half a turn: a shortest line inside bends only
  // there.
  const std::vector<Corner>& reflex_corners() const { return reflex_; }
  // Corners where it is less: a line round the outside bends only there.
  const std::vector<Corner>& convex_corners() const { return convex_; }

 private:
  void add(const Ring& ring, std::vector<Segment>& edges);
  bool near_boundary(Point p) const;
  struct Leg;
  // Places along the leg, in metres, where it meets the boundary. With `stop` set, false as soon as it passes
  // clean through an edge.
  bool meetings(const Leg& leg, bool stop, std::vector<double>& out) const;
  // Visits the parts of the leg between meetings by start, end and middle until `visit` returns false.
  template <class Visit>
  bool parts(const Leg& leg, std::vector<double>& at, Visit visit) const;

  std::vector<Corner> reflex_, convex_;
  EdgeGrid grid_;
};

}  // namespace underlawn
