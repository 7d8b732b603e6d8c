// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/cheaper_bends.h"

#include <array>
#include <cmath>
#include <numbers>

namespace underlawn {

namespace {

constexpr int kRounds = 3, kStridesOfAStep = 12, kDirections = 8;
constexpr double kFirstStep = 1.6, kLastStep = 0.01;              // m, of a shift
constexpr double kWorth = 0.01;                                   // m of plain digging
constexpr std::array kAlong = {0.1, 0.3, 0.5, 0.7, 0.9};          // of a leg, where a bend is put in
constexpr std::array kAside = {-2.0, -1.0, -0.4, 0.4, 1.0, 2.0};  // m
constexpr double kHope = 2;  // m of plain digging that a bend put in may be too dear before it is shifted

class Bends {
 public:
  Bends(Polyline line, const Router& router) : line_(std::move(line)), router_(router) {}

  double cost() const { return cost(line_); }

  const Polyline& line() const { return line_; }

  void cheapen() {
    for (int round = 0; round < kRounds; ++round) {
      const double before = cost();
      leave_out();
      for (std::size_t i = 1; i + 1 < line_.size(); ++i)
        line_[i] = shifted(line_[i - 1], line_[i], line_[i + 1]);
      leave_out();
      put_in();
      if (cost() > before - kWorth) break;
    }
  }

 private:
  double cost(const Polyline& line) const { return router_.cost(line); }
  bool open(Point a, Point b) const { return distance(a, b) > kSamePlace && router_.free().sees(a, b); }

  void leave_out() {
    for (std::size_t i = 1; i + 1 < line_.size();) {
      const Point a = line_[i - 1], b = line_[i + 1];
      if (open(a, b) && cost({a, b}) < cost({a, line_[i], b}))
        line_.erase(line_.begin() + static_cast<std::ptrdiff_t>(i));
      else
        ++i;
    }
  }

  // Where between its neighbours the bend is cheapest, step by smaller step.
  Point shifted(Point a, Point at, Point b) const {
    double least = cost({a, at, b});
    double step = kFirstStep;
    while (step > kLastStep) {
      for (int stride = 0; stride < kStridesOfAStep && stride_taken(a, at, b, step, least); ++stride) {
      }
      step /= 2;
    }
    return at;
  }

  bool stride_taken(Point a, Point& at, Point b, double step, double& least) const {
    Point best = at;
    const double before = least, from = std::atan2(b.y - a.y, b.x - a.x);
    for (int i = 0; i < kDirections; ++i) {
      const Point p = at + step * direction(from + 2 * std::numbers::pi * i / kDirections);
      if (distance(a, p) + distance(p, b) >= least) continue;  // dearer even over plain ground
      const double price = cost({a, p, b});
      if (price >= least - kWorth / 10 || !open(a, p) || !open(p, b)) continue;
      least = price;
      best = p;
    }
    at = best;
    return least < before;
  }

  void put_in() {
    for (std::size_t i = 1; i < line_.size(); ++i) {
      const Point a = line_[i - 1], b = line_[i];
      const double straight = cost({a, b});
      if (straight < distance(a, b) + kBendWorth) continue;
      const auto at = bend_between(a, b, straight + kHope);
      if (!at) continue;
      const Point q = shifted(a, *at, b);
      if (cost({a, q, b}) > straight - kWorth) continue;
      line_.insert(line_.begin() + static_cast<std::ptrdiff_t>(i), q);
      ++i;
    }
  }

  static constexpr double kBendWorth =
      1;  // a leg that is dearer than plain ground by less has nothing to gain

  std::optional<Point> bend_between(Point a, Point b, double at_most) const {
    std::optional<Point> best;
    const Point n = left_normal(unit(b - a));
    for (double along : kAlong)
      for (double aside : kAside) {
        const Point p = a + along * (b - a) + aside * n;
        if (distance(a, p) + distance(p, b) >= at_most) continue;
        const double price = cost({a, p, b});
        if (price >= at_most || !open(a, p) || !open(p, b)) continue;
        at_most = price;
        best = p;
      }
    return best;
  }

  Polyline line_;
  const Router& router_;
};

}  // namespace

Polyline with_cheaper_bends(const Polyline& line, const Router& router) {
  if (line.size() < 2) return line;
  Bends bends(line, router);
  const double before = bends.cost();
  bends.cheapen();
  return bends.cost() < before ? bends.line() : line;
}

}  // namespace underlawn
