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

// erf is 1 to the last bit beyond this.
constexpr double kFull = 6;

double erf_of(double v) {
  return v > kFull ? 1 : v < -kFull ? -1 : std::erf(v);
}

// Second antiderivative of exp(-u^2 x^2).
double twice_integrated(double x, double u) {
  const double v = u * x;
  const double tail = std::abs(v) > kFull ? 0 : std::exp(-v * v) / (2 * u * u);
  return x * std::sqrt(pi) / (2 * u) * erf_of(v) + tail;
}

double parallel_pair(double a0, double a1, double b0, double b1, double apart, double u) {
  const double across = u * u * apart * apart;
  if (across > kGone) return 0;
  const double along = twice_integrated(a1 - b0, u) - twice_integrated(a0 - b0, u) -
                       twice_integrated(a1 - b1, u) + twice_integrated(a0 - b1, u);
  return std::exp(-across) * std::max(along, 0.0);
}

// A segment as another one sees it: x along that one from its start, y aside; s runs along this one.
struct Seen {
  double x = 0, y = 0;    // m, where s = 0
  double dx = 0, dy = 0;  // per metre of s
  double length = 0;      // m
  double other = 0;       // m, length of the one that sees
};

Seen seen_from(const Segment& b, const Segment& a, double la, double lb) {
  const Point along = (1 / lb) * (b.b - b.a), own = (1 / la) * (a.b - a.a);
  const Point from = a.a - b.a;
  return {dot(from, along), cross(along, from), dot(own, along), cross(along, own), la, lb};
}

struct Span {
  double from, to;
};

// The part of `span` in which start + slope s lies within [low, high].
Span within(Span span, double start, double slope, double low, double high) {
  if (std::abs(slope) < 1e-12) return start < low || start > high ? Span{0, 0} : span;
  const double s0 = (low - start) / slope, s1 = (high - start) / slope;
  return {std::max(span.from, std::min(s0, s1)), std::min(span.to, std::max(s0, s1))};
}

template <int points>
double over_panels(const Seen& a, Span span, int panels, double u) {
  const auto at = [&](double s) {
    const double x = a.x + a.dx * s, y = u * (a.y + a.dy * s);
    return std::exp(-y * y) * (erf_of(u * x) - erf_of(u * (x - a.other)));
  };
  const double step = (span.to - span.from) / panels;
  double sum = 0;
  for (int i = 0; i < panels; ++i)
    sum += boost::math::quadrature::gauss<double, points>::integrate(at, span.from + i * step,
                                                                     span.from + (i + 1) * step);
  return sum * std::sqrt(pi) / (2 * u);
}

// By panels no longer than the integrand is smooth, on the part of `a` that feels the other.
double skew_pair(const Seen& a, double u) {
  const double reach = std::sqrt(kGone) / u;
  Span span = within({0, a.length}, a.y, a.dy, -reach, reach);
  span = within(span, a.x, a.dx, -reach, a.other + reach);
  if (span.to <= span.from) return 0;
  const double wide = u * (span.to - span.from);
  if (wide < 0.5) return over_panels<5>(a, span, 1, u);
  return over_panels<10>(a, span, static_cast<int>(std::ceil(wide / 3)), u);
}

}  // namespace

double gaussian_point(Point p, const Segment& b, double u) {
  const double length = distance(b.a, b.b);
  if (length <= 0) return 0;
  const Point along = (1 / length) * (b.b - b.a);
  const double s = dot(p - b.a, along), apart = cross(along, p - b.a);
  const double across = u * u * apart * apart;
  if (across > kGone) return 0;
  return std::exp(-across) * std::sqrt(pi) / (2 * u) * (erf_of(u * s) - erf_of(u * (s - length)));
}

double gaussian_pair(const Segment& a, const Segment& b, double u) {
  const double la = distance(a.a, a.b), lb = distance(b.a, b.b);
  if (la <= 0 || lb <= 0) return 0;
  const Point along = (1 / lb) * (b.b - b.a);
  const double turn = cross(along, (1 / la) * (a.b - a.a));
  if (std::abs(turn) > 1e-9) return skew_pair(la < lb ? seen_from(b, a, la, lb) : seen_from(a, b, lb, la), u);
  const double s0 = dot(a.a - b.a, along), s1 = dot(a.b - b.a, along);
  return parallel_pair(std::min(s0, s1), std::max(s0, s1), 0, lb, cross(along, a.a - b.a), u);
}

}  // namespace underlawn
