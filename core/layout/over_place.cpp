// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/over_place.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

constexpr double kFar = 1e6;     // m
constexpr double kTouch = 1e-3;  // m that a thing may reach in

struct Span {
  double low = kFar, high = -kFar;
  void add(double from, double to) {
    low = std::min(low, from);
    high = std::max(high, to);
  }
};

// What a capsule covers of the x axis.
void add_cut(Span& span, Point a, Point b, double reach) {
  for (Point p : {a, b})
    if (std::abs(p.y) <= reach) {
      const double chord = std::sqrt(reach * reach - p.y * p.y);
      span.add(p.x - chord, p.x + chord);
    }
  if (!(distance(a, b) > 0)) return;
  const Point n = reach * left_normal(unit(b - a));
  for (Point off : {n, -1.0 * n}) {
    const Point p = a + off, q = b + off;
    if ((p.y < 0) == (q.y < 0)) continue;
    const double x = p.x + (q.x - p.x) * (p.y / (p.y - q.y));
    span.add(x, x);
  }
}

// The part of a segment between two heights; nothing where it has none there.
std::optional<Segment> between(Segment s, double low, double high) {
  if (s.a.y > s.b.y) std::swap(s.a, s.b);
  if (s.b.y < low || s.a.y > high) return std::nullopt;
  const auto at = [s](double y) {
    return s.b.y > s.a.y ? s.a + (y - s.a.y) / (s.b.y - s.a.y) * (s.b - s.a) : s.a;
  };
  return Segment{s.a.y < low ? at(low) : s.a, s.b.y > high ? at(high) : s.b};
}

}  // namespace

LineCut::LineCut(const std::vector<InWay>& all, const LineOver& line, double trench_width)
    : all_(all), line_(line), u_(direction(line.angle)), half_(trench_width / 2) {
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const Capsule& c : all[i].capsules) cut(c, i);
    for (const Ring& area : all[i].areas) cut(area, all[i].lot, i);
  }
}

// As if the trench were its middle line: what lies in its strip, and what is above or below moved up to it.
void LineCut::cut(const Capsule& c, std::size_t by) {
  const Point n = left_normal(u_);
  const auto turned = [&](Point p) { return Point{dot(p - line_.at, u_), dot(p - line_.at, n)}; };
  const Segment s{turned(c.a), turned(c.b)};
  Span span;
  if (const auto in = between(s, -half_, half_)) {
    span.add(in->a.x - c.reach, in->a.x + c.reach);
    span.add(in->b.x - c.reach, in->b.x + c.reach);
  }
  if (const auto over = between(s, half_, kFar))
    add_cut(span, over->a - Point{0, half_}, over->b - Point{0, half_}, c.reach);
  if (const auto under = between(s, -kFar, -half_))
    add_cut(span, under->a + Point{0, half_}, under->b + Point{0, half_}, c.reach);
  if (span.low <= span.high) blocked_.push_back({span.low, span.high, by});
}

void LineCut::cut(const Ring& area, bool lot, std::size_t by) {
  const Point n = left_normal(u_);
  std::vector<double> meets;
  for (std::size_t i = 0, j = area.size() - 1; i < area.size(); j = i++) {
    const double a = dot(area[j] - line_.at, n), b = dot(area[i] - line_.at, n);
    if ((a > 0) == (b > 0)) continue;
    meets.push_back(dot(area[j] + (a / (a - b)) * (area[i] - area[j]) - line_.at, u_));
  }
  std::sort(meets.begin(), meets.end());
  if (lot) {
    meets.insert(meets.begin(), -kFar);
    meets.push_back(kFar);
  }
  for (std::size_t i = 0; i + 1 < meets.size(); i += 2) blocked_.push_back({meets[i], meets[i + 1], by});
}

// Of a trench that has the place between its ends, where something just stops being in its way.
std::vector<double> LineCut::starts(double length) const {
  std::vector<double> all = {-length / 2, 0, -length};
  for (const Blocked& b : blocked_)
    for (double x : {b.high, b.low - length, b.high - all_[b.by].spare, b.low - length + all_[b.by].spare})
      if (x > -length && x < 0) all.push_back(x);
  return all;
}

double LineCut::mark(double from, double length, std::vector<char>& hit) const {
  std::fill(hit.begin(), hit.end(), 0);
  double within = 0;
  for (const Blocked& b : blocked_) {
    const double spare = all_[b.by].spare;
    const auto meets = [&b](double low, double high) {
      return b.high > low + kTouch && b.low < high - kTouch;
    };
    if (!meets(from + spare, from + length) || !meets(from, from + length - spare)) continue;
    hit[b.by] = 1;
    within += std::min(b.high - from, from + length - b.low);
  }
  return within;
}

double LineCut::open(std::size_t count) const {
  double low = -kFar, high = kFar;
  for (const Blocked& b : blocked_) {
    if (b.by >= count) continue;
    if (b.low <= 0 && b.high >= 0) return 0;
    if (b.high < 0) low = std::max(low, b.high);
    if (b.low > 0) high = std::min(high, b.low);
  }
  return high - low;
}

}  // namespace underlawn
