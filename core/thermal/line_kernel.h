// SPDX-License-Identifier: GPL-3.0-or-later
// Straight pieces of pipe seen from above: their Gaussian double integrals in closed form.
#pragma once

#include "plane/point.h"

namespace underlawn {

// Integral over both segments of exp(-u^2 |r - r'|^2) ds ds' in the plan, m2. Exact for parallel segments, by
// panels of Gauss quadrature to 1e-9 for others. u > 0 in 1/m.
double gaussian_pair(const Segment& a, const Segment& b, double u);

// Integral over one segment of exp(-u^2 |p - r'|^2) ds', m.
double gaussian_point(Point p, const Segment& b, double u);

}  // namespace underlawn
