// SPDX-License-Identifier: GPL-3.0-or-later
// Capsules and areas of a ground, turned and made ready to be cut by many strips along one axis.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <span>
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
using FreeView = std::span<const Interval>;

class Cuts {
 public:
  // Every capsule wider by `wider` m. Strips run along `axis` of the turned plane.
  Cuts(const Confines& ground, const Turn& turn, Axis axis, double wider);

  // Where along the strip low <= across <= high nothing is in the way, each thing longer by `grow` at both
  // ends. Inside or outside of areas is decided on the strip's middle line. Exact.
  void free(double low, double high, double grow, Free& out) const;
  // Across: both ends of each thing, off by its reach and `beside` to both sides.
  void add_ends(double beside, std::vector<double>& out) const;
  bool is_free(Point turned) const;  // whether the point keeps off everything

  const Free& spans() const { return spans_; }  // what each capsule covers across, in their order along
  bool square(std::size_t i) const { return std::abs(shapes_[i].ay - shapes_[i].by) < 0.01; }  // lies along x

 private:
  // One side of a capsule: straight between two heights, below and above them an arc about an end.
  struct Flank {
    double from, to;       // heights
    double low_x, high_x;  // of the ends
    double x;              // of the straight part at `from`
    double farthest;       // height of the end that is farther out
    double out;            // how far out it is there
  };
  struct Shape {
    double ay, by;  // heights of the ends, a the lower one
    double reach;
    double slope, drop;  // of the straight sides; drop: how much lower the right one begins than a
    Flank right, left;
    // Largest and smallest x at a height it reaches: a straight side parallel to the segment between two arcs
    // about its ends.
    double right_at(double y) const {
      if (y <= right.from) return right.low_x + half_chord(y - ay);
      if (y >= right.to) return right.high_x + half_chord(y - by);
      return right.x + (y - ay + drop) * slope;
    }
    double left_at(double y) const {
      if (y <= left.from) return left.low_x - half_chord(y - ay);
      if (y >= left.to) return left.high_x - half_chord(y - by);
      return left.x + (y - ay - drop) * slope;
    }
    double half_chord(double off) const { return std::sqrt(std::max(0.0, reach * reach - off * off)); }
  };
  struct Side {
    double ax, ay, by, slope;
  };
  struct Area {
    std::size_t first, last;  // sides
    double low, high;
  };
  static Shape shape_of(Point a, Point b, double reach);
  void add_area(const Ring& ring, const Turn& turn, Axis axis);
  double* crossed(const Area& area, double at, double* meets) const;
  Interval* block(double low, double high, double grow, std::uint32_t* met, Interval* blocked) const;
  Interval* block_areas(double at, double grow, Interval* blocked, double* meets) const;

  Free spans_;  // of the shapes, across
  std::vector<Shape> shapes_;
  std::vector<Side> sides_;
  std::vector<Area> areas_;  // the lot first
  Interval along_;           // what the lot covers of the axis
};

void met(const Free& a, const Free& b, Free& out);  // in both
void join(Free& a, const Free& b, double shift);    // a: in a, or in b moved by `shift`
// The most points of the intervals that keep the pitch: always the lowest that may be taken.
int packed(FreeView intervals, double pitch, double slack);

}  // namespace underlawn
