// SPDX-License-Identifier: GPL-3.0-or-later
// Capsules and areas of a ground, turned and made ready to be cut by many strips along one axis.
#pragma once

#include <vector>

#include "layout/zones.h"

namespace underlawn {

// A turn of the plane by -angle, so that trenches of that direction lie along x, and back again.
struct Turn {
  explicit Turn(double angle) : c(std::cos(angle)), s(std::sin(angle)) {}
  Point there(Point p) const { return {c * p.x + s * p.y, c * p.y - s * p.x}; }
  Point back(Point p) const { return {c * p.x - s * p.y, s * p.x + c * p.y}; }
  double c, s;
};

enum class Axis { x, y };

using Free = std::vector<Interval>;  // closed, in order

class Cuts {
 public:
  // Every capsule wider by `wider` m. Strips run along `axis` of the turned plane.
  Cuts(const Ground& ground, const Turn& turn, Axis axis, double wider);

  // Where along the strip low <= across <= high nothing is in the way, each thing longer by `grow` at both
  // ends. Inside or outside of areas is decided on the strip's middle line. Exact.
  void free(double low, double high, double grow, Free& out) const;
  // Across: both ends of each thing, off by its reach and `beside` to both sides.
  void add_ends(double beside, std::vector<double>& out) const;
  bool is_free(Point turned) const;  // whether the point keeps off everything

  const Free& spans() const { return spans_; }  // what each capsule covers across
  bool square(std::size_t i) const { return std::abs(shapes_[i].ay - shapes_[i].by) < 0.01; }  // lies along x

 private:
  // a is the lower end, x along the axis.
  struct Shape {
    double ax, ay, bx, by, reach;
    double slope, beside, drop;  // of the straight sides; slope is not a number where the capsule lies flat
    double right(double y) const;
    double left(double y) const;
  };
  struct Side {
    double ax, ay, by, slope;
  };
  struct Area {
    std::size_t first, last;  // sides
    double low, high;
  };
  void add_area(const Ring& ring, const Turn& turn, Axis axis);
  void block_ring(const Area& area, double at, bool inside, double grow, Free& blocked) const;

  Free spans_;  // of the shapes, across
  std::vector<Shape> shapes_;
  std::vector<Side> sides_;
  std::vector<Area> areas_;  // the lot first
  Interval along_;           // what the lot covers of the axis
};

Free met(const Free& a, const Free& b);           // in both
void join(Free& a, const Free& b, double shift);  // a: in a, or in b moved by `shift`
// The most points of the intervals that keep the pitch: always the lowest that may be taken.
int packed(const Free& intervals, double pitch, double slack);

}  // namespace underlawn
