// SPDX-License-Identifier: GPL-3.0-or-later
// The way round obstacles against a plain search over every pair of corners, with legs judged by
// Boost.Geometry.
#include "plane/route.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <numbers>
#include <random>

using namespace underlawn;

namespace {

namespace bg = boost::geometry;
using BPoint = bg::model::d2::point_xy<double>;
using BPolygon = bg::model::polygon<BPoint, false, true>;

struct Scene {
  Ring lot = {{0, 0}, {60, 0}, {60, 40}, {0, 40}};
  std::vector<Ring> blocks;  // may overlap
  Point from{1, 1}, to{59, 39};
};

Scene random_scene(std::mt19937& random) {
  const auto number = [&](double low, double high) {
    return low + (high - low) * std::generate_canonical<double, 53>(random);
  };
  Scene s;
  for (int i = 0; i < 7; ++i) {
    const Point c{number(8, 52), number(6, 34)};
    const Point along = direction(number(0, std::numbers::pi));
    const double half = number(2, 9);
    s.blocks.push_back(rectangle_along({c - half * along, c + half * along}, number(2, 8)));
  }
  return s;
}

Region free_ground(const Scene& s) {
  std::vector<Region> blocks;
  for (const Ring& b : s.blocks) blocks.push_back(region_of(b));
  return subtract(region_of(s.lot), unite(blocks));
}

// Metres of a leg that lie inside any block, by Boost.Geometry, block by block.
double blocked(const Scene& s, Point a, Point b) {
  bg::model::linestring<BPoint> leg{{a.x, a.y}, {b.x, b.y}};
  double sum = 0;
  for (const Ring& ring : s.blocks) {
    BPolygon polygon;
    for (Point p : ring) polygon.outer().push_back({p.x, p.y});
    polygon.outer().push_back(polygon.outer().front());
    bg::correct(polygon);
    std::vector<bg::model::linestring<BPoint>> in;
    bg::intersection(leg, polygon, in);
    for (const auto& l : in) {
      // What lies along the boundary, to the clipper's grid, is not inside.
      BPoint middle{(l.front().x() + l.back().x()) / 2, (l.front().y() + l.back().y()) / 2};
      bg::model::linestring<BPoint> edge(polygon.outer().begin(), polygon.outer().end());
      if (bg::within(middle, polygon) && bg::distance(middle, edge) > 1e-4) sum += bg::length(l);
    }
  }
  return sum;
}

std::optional<double> plain_search(const Scene& s) {
  std::vector<Point> nodes = {s.from, s.to};
  for (const Polygon& p : free_ground(s)) {
    for (Point c : p.outer) nodes.push_back(c);
    for (const Ring& h : p.holes)
      for (Point c : h) nodes.push_back(c);
  }
  std::vector<double> cost(nodes.size(), 1e300);
  std::vector<bool> done(nodes.size());
  cost[0] = 0;
  for (;;) {
    int at = -1;
    for (std::size_t i = 0; i < nodes.size(); ++i)
      if (!done[i] && cost[i] < 1e299 && (at < 0 || cost[i] < cost[at])) at = static_cast<int>(i);
    if (at < 0) return std::nullopt;
    if (at == 1) return cost[1];
    done[at] = true;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      const double c = cost[at] + distance(nodes[at], nodes[i]);
      if (!done[i] && c < cost[i] && blocked(s, nodes[at], nodes[i]) < 3e-3) cost[i] = c;
    }
  }
}

RouteRequest request_of(const Scene& s) {
  return {s.from, s.to, free_ground(s), {}, 0};
}

}  // namespace

TEST(Route, IsAsShortAsAPlainSearchOverAllCorners) {
  std::mt19937 random(7);
  int found = 0;
  for (int i = 0; i < 120; ++i) {
    const Scene s = random_scene(random);
    const auto plain = plain_search(s);
    const auto route = shortest_route(request_of(s));
    ASSERT_EQ(route.has_value(), plain.has_value()) << i;
    if (!plain) continue;
    ++found;
    EXPECT_NEAR(route->length, *plain, 5e-3) << i;
    for (std::size_t k = 1; k < route->line.size(); ++k)
      EXPECT_LT(blocked(s, route->line[k - 1], route->line[k]), 5e-3) << i;
  }
  EXPECT_GT(found, 60);
}

TEST(Route, IsTheSameBackwardsAndOnATurnedLot) {
  std::mt19937 random(8);
  for (int i = 0; i < 40; ++i) {
    const Scene s = random_scene(random);
    Scene turned = s, back = s;
    std::swap(back.from, back.to);
    const auto move = [](Point p) { return Point{100, -30} + rotated(p, 0.7); };
    for (Ring* r : {&turned.lot}) std::transform(r->begin(), r->end(), r->begin(), move);
    for (Ring& r : turned.blocks) std::transform(r.begin(), r.end(), r.begin(), move);
    turned.from = move(s.from);
    turned.to = move(s.to);
    const auto a = shortest_route(request_of(s)), b = shortest_route(request_of(back)),
               c = shortest_route(request_of(turned));
    ASSERT_EQ(a.has_value(), b.has_value());
    ASSERT_EQ(a.has_value(), c.has_value());
    if (!a) continue;
    EXPECT_NEAR(a->length, b->length, 1e-6);
    EXPECT_NEAR(a->length, c->length, 1e-3);
  }
}

TEST(Route, ThereIsNoneThroughAWall) {
  Scene s;
  s.blocks = {{{30, -1}, {32, -1}, {32, 41}, {30, 41}}};
  EXPECT_FALSE(shortest_route(request_of(s)));
}

TEST(Route, GoesRoundDearGroundWhenThatIsCheaper) {
  RouteRequest q{{0, 10}, {40, 10}, region_of(Ring{{-1, -1}, {41, -1}, {41, 41}, {-1, 41}}), {}, 0};
  q.dear = {{region_of(Ring{{18, 0}, {22, 0}, {22, 14}, {18, 14}}), 5, 0}};
  const auto round = shortest_route(q);
  const double way = 2 * std::hypot(18, 4) + 4;
  EXPECT_NEAR(round->cost, way, 1e-9);
  q.dear[0].per_metre = 0.1;
  const auto across = shortest_route(q);
  EXPECT_NEAR(across->length, 40, 1e-9);
  EXPECT_NEAR(across->cost, 40.4, 1e-9);
  q.dear[0].per_entry = 0.3;
  EXPECT_NEAR(shortest_route(q)->cost, 40.7, 1e-9);
}

TEST(Route, ABendCostsWhatItIsWorth) {
  Scene s;
  s.from = {5, 5};
  s.to = {55, 5};
  s.blocks = {{{25, -1}, {35, -1}, {35, 15}, {25, 15}}};
  RouteRequest q = request_of(s);
  const double free_cost = shortest_route(q)->cost;
  q.per_bend = 2;
  EXPECT_NEAR(shortest_route(q)->cost, free_cost + 4, 1e-9);
}

TEST(Route, SlidesAlongABoundaryAndStartsOnOne) {
  RouteRequest q{{0, 0}, {40, 0}, region_of(Ring{{0, 0}, {40, 0}, {40, 10}, {0, 10}}), {}, 0};
  EXPECT_NEAR(shortest_route(q)->length, 40, 1e-9);
  q.from = {-0.0005, 5};
  EXPECT_TRUE(shortest_route(q));
  q.from = {-0.1, 5};
  EXPECT_FALSE(shortest_route(q));
}
