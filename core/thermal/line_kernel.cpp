// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/line_kernel.h"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <numbers>

#include "thermal/kernel_nodes.h"

namespace underlawn {
namespace {

using std::numbers::pi;

// Second antiderivative of exp(-u^2 x^2).
double twice_integrated(double x, double u) {
  const double v = u * x;
  return x * std::sqrt(pi) / (2 * u) * std::erf(v) + std::exp(-v * v) / (2 * u * u);
}

double parallel_pair(double a0, double a1, double b0, double b1, double apart, double u) {
  const double across = u * u * apart * apart;
  if (across > kGone) return 0;
  const double along = twice_integrated(a1 - b0, u) - twice_integrated(a0 - b0, u) -
                       twice_integrated(a1 - b1, u) + twice_integrated(a0 - b1, u);
  return std::exp(-across) * std::max(along, 0.0);
}

double skew_pair(const Segment& a, const Segment& b, double u) {
  const double length = distance(a.a, a.b);
  const int panels = std::clamp(static_cast<int>(std::ceil(length * u / 2)), 1, 4000);
  double sum = 0;
  for (int i = 0; i < panels; ++i) {
    const double s0 = length * i / panels, s1 = length * (i + 1) / panels;
    const Point along = (1 / length) * (a.b - a.a);
    sum += boost::math::quadrature::gauss<double, 10>::integrate(
        [&](double s) { return gaussian_point(a.a + s * along, b, u); }, s0, s1);
  }
  return sum;
}

}  // namespace

double gaussian_point(Point p, const Segment& b, double u) {
  const double length = distance(b.a, b.b);
  if (length <= 0) return 0;
  const Point along = (1 / length) * (b.b - b.a);
  const double s = dot(p - b.a, along), apart = cross(along, p - b.a);
  const double across = u * u * apart * apart;
  if (across > kGone) return 0;
  return std::exp(-across) * std::sqrt(pi) / (2 * u) * (std::erf(u * s) - std::erf(u * (s - length)));
}

double gaussian_pair(const Segment& a, const Segment& b, double u) {
  const double la = distance(a.a, a.b), lb = distance(b.a, b.b);
  if (la <= 0 || lb <= 0) return 0;
  const Point along = (1 / lb) * (b.b - b.a);
  const double turn = cross(along, (1 / la) * (a.b - a.a));
  if (std::abs(turn) > 1e-9) return la < lb ? skew_pair(a, b, u) : skew_pair(b, a, u);
  const double s0 = dot(a.a - b.a, along), s1 = dot(a.b - b.a, along);
  return parallel_pair(std::min(s0, s1), std::max(s0, s1), 0, lb, cross(along, a.a - b.a), u);
}

}  // namespace underlawn
