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
#include <limits>
#include <numbers>
#include <random>

#include "plane/sight.h"

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

namespace {

// A search of the plainest kind for the priced problem, sharing no code with the router: every pair of
// corners, legs cut at every edge and judged piece by piece, Dijkstra over corner and what the way stands
// inside of.
class PlainPriced {
 public:
  explicit PlainPriced(const RouteRequest& q) : q_(q) {
    nodes_ = {q.from, q.to};
    add_corners(q.free, -1);
    for (const DearGround& d : q.dear) add_corners(d.region, 1);
  }

  std::optional<double> cost() {
    const std::size_t states = std::size_t{1} << q_.dear.size();
    std::vector<double> cost(nodes_.size() * states, 1e300);
    std::vector<bool> done(cost.size());
    std::size_t start = 0;
    for (std::size_t d = 0; d < q_.dear.size(); ++d)
      if (depth(q_.dear[d].region, q_.from) > kSamePlace) start |= std::size_t{1} << d;
    cost[start] = 0;
    for (;;) {
      std::size_t at = cost.size();
      for (std::size_t i = 0; i < cost.size(); ++i)
        if (!done[i] && cost[i] < 1e299 && (at == cost.size() || cost[i] < cost[at])) at = i;
      if (at == cost.size()) return std::nullopt;
      if (at / states == 1) return cost[at];
      done[at] = true;
      for (std::size_t to = 1; to < nodes_.size(); ++to) {
        if (to == at / states || !open(nodes_[at / states], nodes_[to])) continue;
        auto [price, state] = priced(nodes_[at / states], nodes_[to], at % states);
        price += cost[at] + distance(nodes_[at / states], nodes_[to]) + (at / states == 0 ? 0 : q_.per_bend);
        cost[to * states + state] = std::min(cost[to * states + state], price);
      }
    }
  }

 private:
  // Corners of one sense: -1 where the boundary turns right, 1 where it turns left.
  void add_corners(const Region& r, int sense) {
    const auto add = [&](const Ring& ring) {
      const std::size_t n = ring.size();
      for (std::size_t i = 0; i < n; ++i) {
        const Point a = ring[(i + n - 1) % n], b = ring[i], c = ring[(i + 1) % n];
        if (sense * cross(b - a, c - b) > 0 && depth(q_.free, b) > -kSamePlace) nodes_.push_back(b);
      }
    };
    for (const Polygon& p : r) {
      add(p.outer);
      for (const Ring& h : p.holes) add(h);
    }
  }

  template <class Visit>
  static void each_edge(const Region& r, Visit visit) {
    const auto ring_edges = [&](const Ring& ring) {
      for (std::size_t i = 0; i < ring.size(); ++i) visit(ring[i], ring[(i + 1) % ring.size()]);
    };
    for (const Polygon& p : r) {
      ring_edges(p.outer);
      for (const Ring& h : p.holes) ring_edges(h);
    }
  }

  // Metres to the boundary, below 0 outside: by the angle the boundary turns about the point.
  static double depth(const Region& r, Point p) {
    double least = 1e300, turned = 0;
    each_edge(r, [&](Point a, Point b) {
      least = std::min(least, distance(Segment{a, b}, p));
      turned += std::atan2(cross(a - p, b - p), dot(a - p, b - p));
    });
    return std::abs(turned) > std::numbers::pi ? least : -least;
  }

  static std::vector<double> cuts(const Region& r, Point a, Point b) {
    std::vector<double> at = {0, 1};
    const Point d = b - a;
    each_edge(r, [&](Point e, Point f) {
      const double across = cross(d, f - e);
      if (std::abs(across) > 1e-12) {
        const double t = cross(e - a, f - e) / across, u = cross(e - a, d) / across;
        if (t > 0 && t < 1 && u > -1e-6 && u < 1 + 1e-6) at.push_back(t);
      }
      for (Point end : {e, f})
        if (distance(Segment{a, b}, end) < kSamePlace) at.push_back(dot(end - a, d) / dot(d, d));
    });
    std::sort(at.begin(), at.end());
    return at;
  }

  bool open(Point a, Point b) const {
    const auto at = cuts(q_.free, a, b);
    for (std::size_t i = 1; i < at.size(); ++i)
      if ((at[i] - at[i - 1]) * distance(a, b) > 2 * kSamePlace &&
          depth(q_.free, a + (at[i] + at[i - 1]) / 2 * (b - a)) < -kSamePlace)
        return false;
    return true;
  }

  std::pair<double, std::size_t> priced(Point a, Point b, std::size_t state) const {
    double price = 0;
    for (std::size_t d = 0; d < q_.dear.size(); ++d) {
      const auto at = cuts(q_.dear[d].region, a, b);
      for (std::size_t i = 1; i < at.size(); ++i) {
        const double metres = (at[i] - at[i - 1]) * distance(a, b);
        if (metres <= 2 * kSamePlace) continue;
        const bool in = depth(q_.dear[d].region, a + (at[i] + at[i - 1]) / 2 * (b - a)) > kSamePlace;
        if (in) price += q_.dear[d].per_metre * metres;
        if (in && !(state >> d & 1)) price += q_.dear[d].per_entry;
        state = in ? state | std::size_t{1} << d : state & ~(std::size_t{1} << d);
      }
    }
    return {price, state};
  }

  const RouteRequest& q_;
  std::vector<Point> nodes_;
};

RouteRequest priced_request(std::mt19937& random, bool dear) {
  const auto number = [&](double low, double high) {
    return low + (high - low) * std::generate_canonical<double, 53>(random);
  };
  RouteRequest q = request_of(random_scene(random));
  q.per_bend = number(0, 3);
  for (int i = 0; dear && i < 3; ++i) {
    const Point c{number(5, 55), number(5, 35)}, along = direction(number(0, std::numbers::pi));
    const Ring band = rectangle_along({c - number(3, 40) * along, c + number(3, 40) * along}, number(1, 5));
    q.dear.push_back({region_of(band), number(0, 4), number(0, 6)});
  }
  return q;
}

}  // namespace

TEST(Route, CostsWhatAPlainSearchFindsToAMicrometre) {
  std::mt19937 random(21);
  int found = 0;
  for (int i = 0; i < 120; ++i) {
    RouteRequest q = priced_request(random, i % 3 != 0);
    if (i % 3 == 0 && i % 2 == 0) q.per_bend = 0;
    const auto plain = PlainPriced(q).cost();
    const auto route = shortest_route(q);
    ASSERT_EQ(route.has_value(), plain.has_value()) << i;
    if (!plain) continue;
    ++found;
    EXPECT_NEAR(route->cost, *plain, 1e-6) << i;
    EXPECT_EQ(route->line.front(), q.from);
    EXPECT_EQ(route->line.back(), q.to);
    EXPECT_DOUBLE_EQ(route->length, length(route->line));
  }
  EXPECT_GT(found, 80);
}

TEST(Route, WithPricesIsTheSameBackwardsMovedAndTurned) {
  std::mt19937 random(22);
  const auto move = [](Point p) { return Point{-60, 45} + rotated(p, 2.1); };
  const auto moved = [&](Region r) {
    for (Polygon& p : r) {
      std::transform(p.outer.begin(), p.outer.end(), p.outer.begin(), move);
      for (Ring& h : p.holes) std::transform(h.begin(), h.end(), h.begin(), move);
    }
    return r;
  };
  for (int i = 0; i < 60; ++i) {
    const RouteRequest q = priced_request(random, true);
    // Where one end stands on dear ground and the other does not, the two ways do not enter equally often.
    if (std::any_of(q.dear.begin(), q.dear.end(), [&](const DearGround& d) {
          return contains(d.region, q.from) || contains(d.region, q.to);
        }))
      continue;
    RouteRequest back = q, turned = q;
    std::swap(back.from, back.to);
    turned.from = move(q.from);
    turned.to = move(q.to);
    turned.free = moved(q.free);
    for (DearGround& d : turned.dear) d.region = moved(d.region);
    const auto a = shortest_route(q), b = shortest_route(back), c = shortest_route(turned);
    ASSERT_EQ(a.has_value(), b.has_value());
    ASSERT_EQ(a.has_value(), c.has_value());
    if (!a) continue;
    EXPECT_NEAR(a->cost, b->cost, 1e-6) << i;
    EXPECT_NEAR(a->cost, c->cost, 1e-6) << i;
  }
}

TEST(Route, StaysInTheFreeGround) {
  std::mt19937 random(23);
  for (int i = 0; i < 200; ++i) {
    const RouteRequest q = priced_request(random, i % 2 == 0);
    const auto route = shortest_route(q);
    if (!route) continue;
    for (std::size_t k = 1; k < route->line.size(); ++k)
      for (double t = 0; t <= 1; t += 1.0 / 64) {
        const Point p = route->line[k - 1] + t * (route->line[k] - route->line[k - 1]);
        EXPECT_TRUE(contains(q.free, p) || Sight(q.free).holds(p)) << i;
      }
  }
}

TEST(Route, ARouterAnswersAsASingleRequestDoes) {
  std::mt19937 random(24);
  RouteRequest q = priced_request(random, true);
  Router router(q.free, q.dear, q.per_bend);
  for (int i = 0; i < 30; ++i) {
    q.from = {60 * std::generate_canonical<double, 53>(random),
              40 * std::generate_canonical<double, 53>(random)};
    q.to = {60 * std::generate_canonical<double, 53>(random),
            40 * std::generate_canonical<double, 53>(random)};
    const auto one = shortest_route(q), many = router.route(q.from, q.to);
    ASSERT_EQ(one.has_value(), many.has_value()) << i;
    if (!one) continue;
    EXPECT_EQ(one->line, many->line) << i;
    EXPECT_EQ(one->cost, many->cost) << i;
  }
}

TEST(Route, PaysToEnterOnceHoweverOftenItBendsInside) {
  // A bent lane, all of it dear: one entry and its metres, though corners of dear ground lie along the way.
  const Region lane = region_of({{0, 0}, {30, 0}, {30, 30}, {26, 30}, {26, 4}, {0, 4}});
  RouteRequest q{{-3, 2},
                 {28, 33},
                 unite({lane, region_of({{-5, 0}, {0, 0}, {0, 4}, {-5, 4}}),
                        region_of({{26, 30}, {30, 30}, {30, 35}, {26, 35}})}),
                 {},
                 0};
  q.dear = {{region_of({{0, -2}, {32, -2}, {32, 30}, {24, 30}, {24, 6}, {0, 6}}), 0.5, 10}};
  const auto route = shortest_route(q);
  ASSERT_TRUE(route);
  const double bent = distance(q.from, Point{26, 4}) + distance(Point{26, 4}, q.to);
  EXPECT_NEAR(route->length, bent, 1e-9);
  const double inside = bent - 3 / (29 / std::hypot(29, 2)) - 3 / (29 / std::hypot(29, 2));
  EXPECT_NEAR(route->cost, bent + 0.5 * inside + 10, 1e-6);
}

TEST(Route, ToWhereItStandsIsNoWay) {
  Scene s;
  s.to = s.from;
  const auto route = shortest_route(request_of(s));
  ASSERT_TRUE(route);
  EXPECT_EQ(route->length, 0);
}

TEST(Route, HasNoAnswerFromAPlaceThatIsNone) {
  Scene s;
  s.from.x = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(shortest_route(request_of(s)));
  EXPECT_FALSE(shortest_route({{0, 0}, {1, 1}, {}, {}, 0}));
}

TEST(Route, PassesBetweenAreasThatOnlyTouchButNotThroughOnesThatOverlap) {
  RouteRequest q{{0, 10}, {40, 10}, {}, {}, 0};
  const Region lot = region_of(Ring{{-1, 0}, {41, 0}, {41, 20}, {-1, 20}});
  q.free = subtract(lot, unite({region_of(Ring{{19, -1}, {21, -1}, {20, 10}}),
                                region_of(Ring{{19, 21}, {20, 10}, {21, 21}})}));
  const auto between = shortest_route(q);
  ASSERT_TRUE(between);
  EXPECT_NEAR(between->length, 40, 1e-6);
  q.free = subtract(lot, unite({region_of(Ring{{19, -1}, {21, -1}, {20, 10.01}}),
                                region_of(Ring{{19, 21}, {20, 10}, {21, 21}})}));
  EXPECT_FALSE(shortest_route(q));
}
