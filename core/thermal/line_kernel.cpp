// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/line_kernel.h"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <numbers>

#include "plane/region.h"
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
double over_panels(Span span, int panels, const auto& at) {
  const double step = (span.to - span.from) / panels;
  double sum = 0;
  for (int i = 0; i < panels; ++i)
    sum += boost::math::quadrature::gauss<double, points>::integrate(at, span.from + i * step,
                                                                     span.from + (i + 1) * step);
  return sum;
}

}  // namespace

SegmentPair::SegmentPair(const Segment& first, const Segment& second) {
  const double l1 = distance(first.a, first.b), l2 = distance(second.a, second.b);
  const Segment &a = l1 < l2 ? first : second, &b = l1 < l2 ? second : first;
  own_ = std::min(l1, l2);
  other_ = std::max(l1, l2);
  apart_ = distance(first, second);
  if (own_ <= 0) return;
  const Point along = (1 / other_) * (b.b - b.a), own = (1 / own_) * (a.b - a.a), from = a.a - b.a;
  x_ = dot(from, along);
  y_ = cross(along, from);
  dx_ = dot(own, along);
  dy_ = cross(along, own);
}

double SegmentPair::at(double u) const {
  if (own_ <= 0 || u * u * apart_ * apart_ > kGone) return 0;
  return std::abs(dy_) > 1e-9 ? skew(u) : parallel(u);
}

double SegmentPair::parallel(double u) const {
  const double from = std::min(x_, x_ + dx_ * own_), to = from + own_;
  const double along = twice_integrated(to, u) - twice_integrated(from, u) -
                       twice_integrated(to - other_, u) + twice_integrated(from - other_, u);
  return std::exp(-u * u * y_ * y_) * std::max(along, 0.0);
}

// By panels as short as the integrand is smooth, on the stretch of the shorter that feels the longer.
double SegmentPair::skew(double u) const {
  const double reach = std::sqrt(kGone) / u;
  Span span = within({0, own_}, y_, dy_, -reach, reach);
  span = within(span, x_, dx_, -reach, other_ + reach);
  if (span.to <= span.from) return 0;
  const auto at = [&](double s) {
    const double x = u * (x_ + dx_ * s), y = u * (y_ + dy_ * s);
    return std::exp(-y * y) * (erf_of(x) - erf_of(x - u * other_));
  };
  const double wide = u * (span.to - span.from);
  const double sum = wide < 0.5   ? over_panels<3>(span, 1, at)
                     : wide < 1.5 ? over_panels<5>(span, 1, at)
                                  : over_panels<7>(span, static_cast<int>(std::ceil(wide / 2.5)), at);
  return sum * std::sqrt(pi) / (2 * u);
}

double gaussian_pair(const Segment& a, const Segment& b, double u) {
  return SegmentPair(a, b).at(u);
}

double gaussian_point(Point p, const Segment& b, double u) {
  const double length = distance(b.a, b.b);
  if (length <= 0) return 0;
  const Point along = (1 / length) * (b.b - b.a);
  const double s = dot(p - b.a, along), apart = cross(along, p - b.a);
  const double across = u * u * apart * apart;
  if (across > kGone) return 0;
  return std::exp(-across) * std::sqrt(pi) / (2 * u) * (erf_of(u * s) - erf_of(u * (s - length)));
}

}  // namespace underlawn
