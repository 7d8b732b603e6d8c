// SPDX-License-Identifier: GPL-3.0-or-later
// Straight pieces of pipe seen from above: their Gaussian double integrals in closed form.
#pragma once

#include "plane/point.h"

namespace underlawn {

// Two segments, made ready for many u.
class SegmentPair {
 public:
  SegmentPair(const Segment& a, const Segment& b);

  // Integral over both of exp(-u^2 |r - r'|^2) ds ds' in the plan, m2. Exact for parallel segments, by Gauss
  // quadrature to a few 1e-6 for others. u > 0 in 1/m.
  double at(double u) const;
  double apart() const { return apart_; }  // m, the least distance

 private:
  double parallel(double u) const;
  double skew(double u) const;

  // The shorter as the longer sees it: at s metres along itself it is x + dx s along the other and
  // y + dy s aside.
  double x_ = 0, y_ = 0, dx_ = 1, dy_ = 0;
  double own_ = 0, other_ = 0;  // m, lengths
  double apart_ = 0;
};

double gaussian_pair(const Segment& a, const Segment& b, double u);

// Integral over one segment of exp(-u^2 |p - r'|^2) ds', m.
double gaussian_point(Point p, const Segment& b, double u);

}  // namespace underlawn
