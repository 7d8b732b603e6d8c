// SPDX-License-Identifier: GPL-3.0-or-later
#include "site/terrain.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace underlawn {

namespace {

constexpr double kHair = 1e-9;      // of a triangle, inside its sides
constexpr double kLongestStep = 5;  // m between stations: beyond the triangles the ground may bend anywhere

double side(Point a, Point b, Point p) {
  return cross(b - a, p - a);
}

Point nearest_on(Point a, Point b, Point p, double& share) {
  const Point d = b - a;
  share = std::clamp(dot(p - a, d) / std::max(dot(d, d), 1e-300), 0.0, 1.0);
  return a + share * d;
}

// Where on leg a-b, as a share of it, it meets c-d; nothing where the two are parallel or miss each other.
std::optional<double> crossing_share(Point a, Point b, Point c, Point d) {
  const Point u = b - a, v = d - c;
  const double det = cross(u, v);
  if (std::abs(det) < 1e-12) return std::nullopt;
  const double s = cross(c - a, v) / det, t = cross(c - a, u) / det;
  if (s <= 0 || s >= 1 || t < 0 || t > 1) return std::nullopt;
  return s;
}

}  // namespace

Terrain::Terrain(std::vector<SpotHeight> heights) : heights_(std::move(heights)) {
  if (heights_.empty()) return;
  std::vector<Point> points;
  for (const SpotHeight& h : heights_) points.push_back(h.at);
  triangles_ = triangles_between(points);
  const auto [low, high] =
      std::minmax_element(heights_.begin(), heights_.end(),
                          [](const SpotHeight& l, const SpotHeight& r) { return l.height < r.height; });
  lowest_ = low->height;
  highest_ = high->height;
  find_edges();
  sort_into_cells();
}

void Terrain::find_edges() {
  std::map<std::pair<int, int>, int> met;
  for (const Triangle& t : triangles_)
    for (std::size_t k = 0; k < 3; ++k) ++met[std::minmax(t.corners[k], t.corners[(k + 1) % 3])];
  for (const auto& [ends, times] : met) edges_.push_back({ends.first, ends.second, times == 1});
  if (!triangles_.empty()) return;
  // All on one line, or alone: a chain along it.
  std::vector<int> order(heights_.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
  std::sort(order.begin(), order.end(),
            [this](int l, int r) { return std::pair(at(l).x, at(l).y) < std::pair(at(r).x, at(r).y); });
  edges_.push_back({order[0], order[0], true});
  for (std::size_t i = 1; i < order.size(); ++i) edges_.push_back({order[i - 1], order[i], true});
}

void Terrain::sort_into_cells() {
  if (triangles_.empty()) return;
  Point high = low_ = at(0);
  for (const SpotHeight& h : heights_) {
    low_ = {std::min(low_.x, h.at.x), std::min(low_.y, h.at.y)};
    high = {std::max(high.x, h.at.x), std::max(high.y, h.at.y)};
  }
  const double across = std::max(high.x - low_.x, high.y - low_.y);
  cell_ = std::max(1e-3, across / std::max(1.0, std::sqrt(static_cast<double>(triangles_.size()))));
  const auto cell_of = [&](double v, double from) { return static_cast<int>((v - from) / cell_); };
  columns_ = cell_of(high.x, low_.x) + 1;
  rows_ = cell_of(high.y, low_.y) + 1;
  cells_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
  for (std::size_t i = 0; i < triangles_.size(); ++i) {
    const auto& c = triangles_[i].corners;
    const auto [x0, x1] = std::minmax({at(c[0]).x, at(c[1]).x, at(c[2]).x});
    const auto [y0, y1] = std::minmax({at(c[0]).y, at(c[1]).y, at(c[2]).y});
    for (int row = cell_of(y0, low_.y); row <= cell_of(y1, low_.y); ++row)
      for (int column = cell_of(x0, low_.x); column <= cell_of(x1, low_.x); ++column)
        cells_[static_cast<std::size_t>(row * columns_ + column)].push_back(static_cast<std::uint32_t>(i));
  }
}

const Triangle* Terrain::triangle_at(Point p) const {
  const double column = std::floor((p.x - low_.x) / cell_), row = std::floor((p.y - low_.y) / cell_);
  if (!(column >= 0 && row >= 0 && column < columns_ && row < rows_)) return nullptr;
  for (std::uint32_t i : cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
                                static_cast<std::size_t>(column)]) {
    const auto& c = triangles_[i].corners;
    const double twice = side(at(c[0]), at(c[1]), at(c[2]));
    if (side(at(c[0]), at(c[1]), p) >= -kHair * twice && side(at(c[1]), at(c[2]), p) >= -kHair * twice &&
        side(at(c[2]), at(c[0]), p) >= -kHair * twice)
      return &triangles_[i];
  }
  return nullptr;
}

double Terrain::beyond(Point p) const {
  double least = 1e300, found = 0;
  for (const Edge& e : edges_) {
    if (!e.outer) continue;
    double share = 0;
    const double away = distance(p, nearest_on(at(e.a), at(e.b), p, share));
    if (away >= least) continue;
    least = away;
    found = level(e.a) + share * (level(e.b) - level(e.a));
  }
  return found;
}

double Terrain::height(Point p) const {
  if (heights_.empty()) return 0;
  const Triangle* t = triangle_at(p);
  if (t == nullptr) return beyond(p);
  const auto& c = t->corners;
  const double twice = side(at(c[0]), at(c[1]), at(c[2]));
  return (side(at(c[1]), at(c[2]), p) * level(c[0]) + side(at(c[2]), at(c[0]), p) * level(c[1]) +
          side(at(c[0]), at(c[1]), p) * level(c[2])) /
         twice;
}

Point Terrain::steepest(Point p) const {
  const Triangle* t = triangle_at(p);
  if (t == nullptr) return {};
  const auto& c = t->corners;
  const Point u = at(c[1]) - at(c[0]), v = at(c[2]) - at(c[0]);
  const double rise_u = level(c[1]) - level(c[0]), rise_v = level(c[2]) - level(c[0]);
  const double det = cross(u, v);
  return {(rise_u * v.y - rise_v * u.y) / det, (rise_v * u.x - rise_u * v.x) / det};
}

GroundLine Terrain::along(const Polyline& line) const {
  GroundLine g;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point a = line[i - 1], b = line[i];
    const double leg = distance(a, b);
    std::vector<double> shares = {0, 1};
    for (const Edge& e : edges_)
      if (const auto s = crossing_share(a, b, at(e.a), at(e.b))) shares.push_back(*s);
    const int steps = is_known() ? static_cast<int>(std::ceil(leg / kLongestStep)) : 1;
    for (int k = 1; k < steps; ++k) shares.push_back(static_cast<double>(k) / steps);
    std::sort(shares.begin(), shares.end());
    for (double s : shares)
      if (g.stations.empty() || s > 0) g.stations.push_back({g.length + s * leg, height(a + s * (b - a))});
    g.length += leg;
  }
  if (g.stations.empty()) return g;
  g.lowest = g.highest = g.stations.front().height;
  double area = 0;
  for (std::size_t i = 0; i < g.stations.size(); ++i) {
    const Station& s = g.stations[i];
    g.lowest = std::min(g.lowest, s.height);
    g.highest = std::max(g.highest, s.height);
    if (i == 0) continue;
    const double run = s.along - g.stations[i - 1].along, rise = s.height - g.stations[i - 1].height;
    area += run * (s.height + g.stations[i - 1].height) / 2;
    g.along_slope += std::hypot(run, rise);
  }
  g.mean = g.length > 0 ? area / g.length : g.lowest;
  return g;
}

}  // namespace underlawn
