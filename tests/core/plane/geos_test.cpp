// SPDX-License-Identifier: GPL-3.0-or-later
// Lots cut by setbacks and clearances, against GEOS: 1,000 seeded lots, many snapped to whole feet or metres
// so that edges are shared, rings touch themselves and obstacles overlap each other and the lot line.
#include <geos_c.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>
#include <random>

#include "plane/region.h"

using namespace underlawn;

namespace {

class Geos {
 public:
  Geos() : handle_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(handle_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;

  using Shape = std::shared_ptr<GEOSGeometry>;
  Shape own(GEOSGeometry* g) const {
    if (!g) throw std::runtime_error("GEOS gave no answer");
    return {g, [h = handle_](GEOSGeometry* p) { GEOSGeom_destroy_r(h, p); }};
  }
  Shape polygon(const Ring& ring) const {
    GEOSCoordSequence* s = GEOSCoordSeq_create_r(handle_, static_cast<unsigned>(ring.size() + 1), 2);
    for (unsigned i = 0; i <= ring.size(); ++i)
      GEOSCoordSeq_setXY_r(handle_, s, i, ring[i % ring.size()].x, ring[i % ring.size()].y);
    return own(GEOSGeom_createPolygon_r(handle_, GEOSGeom_createLinearRing_r(handle_, s), nullptr, 0));
  }
  Shape unite(const Shape& a, const Shape& b) const { return own(GEOSUnion_r(handle_, a.get(), b.get())); }
  Shape minus(const Shape& a, const Shape& b) const {
    return own(GEOSDifference_r(handle_, a.get(), b.get()));
  }
  Shape both(const Shape& a, const Shape& b) const {
    return own(GEOSIntersection_r(handle_, a.get(), b.get()));
  }
  Shape buffer(const Shape& a, double by) const { return own(GEOSBuffer_r(handle_, a.get(), by, 64)); }
  double area(const Shape& a) const {
    double out = 0;
    GEOSArea_r(handle_, a.get(), &out);
    return out;
  }

 private:
  GEOSContextHandle_t handle_;
};

struct Scene {
  Ring lot;
  std::vector<Ring> obstacles;
};

// Seeded: shape and snapping follow from the number alone.
Scene scene_of(unsigned seed) {
  std::mt19937 random(seed);
  const auto number = [&](double low, double high) {
    return low + (high - low) * std::generate_canonical<double, 53>(random);
  };
  const double grid = seed % 3 == 0 ? 0.3048 : seed % 3 == 1 ? 1.0 : 0;
  const auto snapped = [&](Point p) {
    return grid > 0 ? Point{grid * std::round(p.x / grid), grid * std::round(p.y / grid)} : p;
  };
  Scene s;
  const int corners = 4 + static_cast<int>(number(0, 5));
  for (int i = 0; i < corners; ++i) {
    const double a = 2 * std::numbers::pi * (i + number(-0.3, 0.3)) / corners;
    s.lot.push_back(snapped(Point{40, 35} + number(20, 38) * direction(a)));
  }
  const int obstacles = 2 + static_cast<int>(number(0, 8));
  for (int i = 0; i < obstacles; ++i) {
    const Point c = snapped({number(0, 80), number(0, 70)}), size{number(2, 18), number(2, 12)};
    if (i % 3 == 2) {
      const double r = number(2, 8);
      Ring round;
      for (int k = 0; k < 9; ++k) round.push_back(snapped(c + r * direction(2 * std::numbers::pi * k / 9)));
      s.obstacles.push_back(round);
    } else {
      s.obstacles.push_back(
          {c, snapped({c.x + size.x, c.y}), snapped(c + size), snapped({c.x, c.y + size.y})});
    }
  }
  // One against the lot line and one against another, edge on edge.
  s.obstacles.push_back({s.lot[0], s.lot[1], snapped(0.5 * (s.lot[1] + Point{40, 35}))});
  s.obstacles.push_back({s.obstacles[0][1], s.obstacles[0][2], snapped(s.obstacles[0][2] + Point{5, 0})});
  return s;
}

// Rings that are what they seem; snapping can flatten one.
std::vector<Ring> sound_rings(const std::vector<Ring>& drawn) {
  std::vector<Ring> out;
  for (const Ring& r : drawn)
    if (auto ring = checked_ring(r, "obstacle")) out.push_back(*ring);
  return out;
}

}  // namespace

TEST(AgainstGeos, AThousandLotsLessTheirObstaclesHaveTheSameArea) {
  const Geos geos;
  int lots = 0;
  double worst = 0;
  for (unsigned seed = 0; lots < 1000; ++seed) {
    ASSERT_LT(seed, 1200u);
    const Scene s = scene_of(seed);
    const auto lot = checked_ring(s.lot, "lot");
    if (!lot) continue;
    ++lots;
    const std::vector<Ring> obstacles = sound_rings(s.obstacles);
    std::vector<Region> ours;
    auto theirs = geos.polygon(obstacles.front());
    for (const Ring& o : obstacles) {
      ours.push_back(region_of(o));
      theirs = geos.unite(theirs, geos.polygon(o));
    }
    const Region united = unite(ours), free = subtract(region_of(*lot), united);
    const double lot_area = area(*lot);
    const auto near = [&](double a, double b) {
      worst = std::max(worst, std::abs(a - b) / lot_area);
      return std::abs(a - b) <= 1e-4 * lot_area;  // 0.01 %
    };
    EXPECT_TRUE(near(area(united), geos.area(theirs))) << "union, seed " << seed;
    EXPECT_TRUE(near(area(free), geos.area(geos.minus(geos.polygon(*lot), theirs))))
        << "difference, seed " << seed;
    EXPECT_TRUE(
        near(area(intersect(region_of(*lot), united)), geos.area(geos.both(geos.polygon(*lot), theirs))))
        << "intersection, seed " << seed;
  }
  RecordProperty("worst_relative_area", std::to_string(worst));
}

// Offsets are circumscribed: they hold all of what is within the distance, and little that is farther.
TEST(AgainstGeos, OffsetsHoldTheTrueOffsetAndLittleMore) {
  const Geos geos;
  for (unsigned seed = 0; seed < 200; ++seed) {
    const Scene s = scene_of(seed);
    const auto lot = checked_ring(s.lot, "lot");
    if (!lot) continue;
    for (double by : {0.5, 3.048, 7.62}) {
      const double ours = area(grown(region_of(*lot), by));
      // GEOS inscribes its arcs: 64 steps a quarter leave out 0.01 % of a circle.
      const double low = geos.area(geos.buffer(geos.polygon(*lot), by));
      const double high = geos.area(geos.buffer(geos.polygon(*lot), 1.01 * by + 1e-4));
      EXPECT_GE(ours, low * (1 - 1e-9)) << seed << " by " << by;
      EXPECT_LE(ours, high * (1 + 1e-4)) << seed << " by " << by;
      const double inside = area(grown(region_of(*lot), -by));
      const auto whole = geos.polygon(*lot);
      EXPECT_LE(inside, geos.area(geos.buffer(whole, -by)) + 1e-6 * area(*lot)) << seed << " in by " << by;
      EXPECT_GE(inside, geos.area(geos.buffer(whole, -1.01 * by - 1e-4)) - 1e-6 * area(*lot))
          << seed << " in by " << by;
    }
  }
}

// By plain distances: no side of an offset comes nearer than the offset.
TEST(Offsets, NoSideComesNearerThanAsked) {
  const auto nearest = [](const Region& r, Point p) {
    double least = 1e9;
    for (std::size_t i = 0; i < r[0].outer.size(); ++i)
      least = std::min(least, distance(Segment{r[0].outer[i], r[0].outer[(i + 1) % r[0].outer.size()]}, p));
    return least;
  };
  for (double by : {0.3, 1.0, 2.7432, 6.4008, 13.716}) {
    const Region round = buffered(Point{3.21, -7.65}, by);
    ASSERT_EQ(round.size(), 1u);
    EXPECT_GE(nearest(round, {3.21, -7.65}), by);
    EXPECT_LE(nearest(round, {3.21, -7.65}), 1.001 * by + 1e-4);
    // At a corner of any angle the arc about it is no nearer either.
    for (double turn = 0.1; turn < 3.1; turn += 0.13) {
      const Ring wedge = {{0, 0}, 30 * direction(-turn / 2), 30 * direction(turn / 2)};
      EXPECT_GE(nearest(grown(region_of(wedge), by), {0, 0}), by) << by << " " << turn;
      EXPECT_GE(nearest(buffered(Polyline{20 * direction(turn), {0, 0}, {20, 0}}, by), {0, 0}), by)
          << by << " " << turn;
    }
  }
}

TEST(AgainstGeos, ALotThatASetbackCutsInTwoStaysTwo) {
  const Ring hourglass = {{0, 0},   {30, 0}, {30, 20}, {17, 22}, {30, 24},
                          {30, 44}, {0, 44}, {0, 24},  {13, 22}, {0, 20}};
  const Region in = grown(region_of(checked_ring(hourglass, "lot").value()), -3);
  ASSERT_EQ(in.size(), 2u);
  const Geos geos;
  EXPECT_NEAR(area(in), geos.area(geos.buffer(geos.polygon(hourglass), -3)), 0.01 * area(in));
}
