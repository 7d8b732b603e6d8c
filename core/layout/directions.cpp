// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/directions.h"

#include <algorithm>

#include "layout/in_steps.h"

namespace underlawn {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kDegree = kPi / 180;
constexpr double kSameBearing = 0.05 * kDegree;
constexpr double kLongUtility = 10;     // m
constexpr std::size_t kMostDrawn = 48;  // longest edges first

double half_turn(double angle) {
  const double a = std::fmod(angle, kPi);
  const double positive = a < 0 ? a + kPi : a;
  return positive >= kPi - 1e-12 ? 0 : positive;
}

struct Edge {
  double angle, length;
};

void add_edge(std::vector<Edge>& edges, Point a, Point b) {
  const double long_ = distance(a, b);
  if (long_ > 0.5) edges.push_back({std::atan2(b.y - a.y, b.x - a.x), long_});
}

std::vector<Edge> drawn_edges(const Site& site) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < site.lot.size(); ++i)
    add_edge(edges, site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at);
  for (const Feature& f : site.features) {
    if (f.kind == FeatureKind::house)
      for (std::size_t i = 0; i < f.points.size(); ++i)
        add_edge(edges, f.points[i], f.points[(i + 1) % f.points.size()]);
    if (f.kind == FeatureKind::utility)
      for (std::size_t i = 1; i < f.points.size(); ++i)
        if (distance(f.points[i - 1], f.points[i]) >= kLongUtility)
          add_edge(edges, f.points[i - 1], f.points[i]);
  }
  std::stable_sort(edges.begin(), edges.end(),
                   [](const Edge& l, const Edge& r) { return in_steps(l.length) > in_steps(r.length); });
  return edges;
}

/// Folded by the longest edge, not by east, so that the directions of a turned lot are the same ones turned.
void add_bearing(std::vector<Bearing>& all, double angle, double from, bool drawn) {
  const double a = from + half_turn(angle - from);
  const bool known = std::any_of(all.begin(), all.end(), [a](const Bearing& b) {
    const double apart = std::abs(a - b.angle);
    return std::min(apart, kPi - apart) < kSameBearing;
  });
  if (!known) all.push_back({a, drawn});
}

}  // namespace

std::vector<Bearing> bearings_to_try(const Site& site) {
  std::vector<Bearing> all;
  double first = 0;
  for (const Edge& e : drawn_edges(site)) {
    if (all.empty()) first = e.angle;
    if (all.size() >= kMostDrawn) break;
    add_bearing(all, e.angle, first, true);
    add_bearing(all, e.angle + kPi / 2, first, true);
  }
  // The grid starts from the longest edge, so that a turned lot is searched by the same turned directions.
  for (int i = 0; i < 180; ++i) add_bearing(all, first + i * kGridStep, first, false);
  return all;
}

std::vector<Bearing> bearings_round(double angle) {
  std::vector<Bearing> all;
  for (double off : {-1.0, -0.5, -0.25, 0.25, 0.5, 1.0}) all.push_back({angle + off * kDegree, false});
  return all;
}

}  // namespace underlawn
