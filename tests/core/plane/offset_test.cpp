// SPDX-License-Identifier: GPL-3.0-or-later
// Offsets of awkward shapes, judged by plain distances from points strewn about them.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "plane/region.h"

using namespace underlawn;

namespace {

std::vector<Point> strewn(unsigned seed, int count) {
  std::mt19937 random(seed);
  const auto number = [&] { return -12 + 44 * std::generate_canonical<double, 53>(random); };
  std::vector<Point> points;
  for (int i = 0; i < count; ++i) {
    const double x = number();
    points.push_back({x, number()});
  }
  return points;
}

double to_edges(const Region& r, Point p) {
  double least = 1e9;
  const auto look = [&](const Ring& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      least = std::min(least, distance(Segment{ring[i], ring[(i + 1) % ring.size()]}, p));
  };
  for (const Polygon& g : r) {
    look(g.outer);
    for (const Ring& h : g.holes) look(h);
  }
  return least;
}

std::size_t corners(const Region& r) {
  std::size_t n = 0;
  for (const Polygon& g : r) {
    n += g.outer.size();
    for (const Ring& h : g.holes) n += h.size();
  }
  return n;
}

// Shapes with what makes offsets hard: notches narrower than the offset, holes, short edges in a row, spikes,
// parts that touch.
std::vector<Region> awkward() {
  Ring comb = {{0, 20}, {0, 0}};
  for (int i = 0; i < 10; ++i) {
    comb.push_back({2.0 * i + 1, 0});
    comb.push_back({2.0 * i + 1.3, 9});
    comb.push_back({2.0 * i + 1.6, 0});
  }
  comb.push_back({20, 0});
  comb.push_back({20, 20});
  Ring star;
  for (int i = 0; i < 24; ++i)
    star.push_back(Point{10, 10} + (i % 2 ? 4.0 : 10.0) * direction(i * std::numbers::pi / 12));
  Ring bay = {{0, 0}, {20, 0}, {20, 20}};
  for (int i = 0; i <= 40; ++i) bay.push_back(Point{10, 20} + 6 * direction(-i * std::numbers::pi / 40));
  bay.push_back({0, 20});
  const Region square = region_of({{0, 0}, {20, 0}, {20, 20}, {0, 20}});
  return {region_of(comb),
          region_of(star),
          region_of(bay),
          subtract(square, region_of({{3, 3}, {8, 4}, {9, 9}, {4, 8}})),
          subtract(square,
                   unite({region_of({{0, 9}, {10, 10}, {0, 11}}), region_of({{10, 10}, {20, 9}, {20, 11}})})),
          region_of({{0, 0}, {20, 0}, {20, 0.003}, {0, 0.001}})};
}

}  // namespace

TEST(Offset, GrownHoldsAllWithinAndNothingMuchFarther) {
  for (const Region& shape : awkward())
    for (double by : {0.05, 0.9, 3.0, 7.0}) {
      const Region big = grown(shape, by);
      for (Point p : strewn(3, 1500)) {
        const double away = contains(shape, p) ? 0 : to_edges(shape, p);
        if (away <= by) {
          EXPECT_TRUE(contains(big, p)) << by << " " << away;
        }
        if (away > 1.01 * by + 4 * kGrid) {
          EXPECT_FALSE(contains(big, p)) << by << " " << away;
        }
      }
    }
}

TEST(Offset, ShrunkHoldsNothingNearerAndAlmostAllFarther) {
  for (const Region& shape : awkward())
    for (double by : {0.05, 0.9, 3.0, 7.0}) {
      const Region small = grown(shape, -by);
      for (Point p : strewn(4, 1500)) {
        const double deep = contains(shape, p) ? to_edges(shape, p) : 0;
        if (deep < by - kGrid) {
          EXPECT_FALSE(contains(small, p)) << by << " " << deep;
        }
        if (deep > 1.01 * by + 4 * kGrid) {
          EXPECT_TRUE(contains(small, p)) << by << " " << deep;
        }
      }
    }
}

TEST(Offset, ABandHoldsAllWithinAndNothingMuchFarther) {
  const std::vector<Polyline> lines = {{{0, 0}, {20, 0}, {20, 20}},
                                       {{0, 0}, {20, 1}, {0, 2}, {20, 3}, {0, 3.5}},
                                       {{5, 5}, {15, 15}, {5, 15}, {15, 5}},
                                       {{0, 0}, {0, 0}, {10, 10}, {10, 10}, {20, 10}},
                                       {{0, 0}, {20, 0}, {5, 0}},
                                       {{7, 7}}};
  for (const Polyline& line : lines)
    for (double by : {0.1, 1.0, 4.0}) {
      const Region band = buffered(line, by);
      for (Point p : strewn(5, 1500)) {
        double away = distance(line.front(), p);
        for (std::size_t i = 1; i < line.size(); ++i)
          away = std::min(away, distance(Segment{line[i - 1], line[i]}, p));
        if (away <= by) {
          EXPECT_TRUE(contains(band, p)) << by << " " << away;
        }
        if (away > 1.01 * by + 4 * kGrid) {
          EXPECT_FALSE(contains(band, p)) << by << " " << away;
        }
      }
    }
}

TEST(Offset, ArcsTakeFewCorners) {
  EXPECT_EQ(corners(buffered(Point{3, 4}, 5)), 24u);
  EXPECT_EQ(corners(buffered(Polyline{{0, 0}, {10, 0}}, 2)), 24u);
  EXPECT_EQ(corners(grown(region_of({{0, 0}, {9, 0}, {9, 9}, {0, 9}}), 2)), 24u);
  // What is grown already is not rounded again: its corners turn little enough for one each.
  EXPECT_EQ(corners(grown(buffered(Point{0, 0}, 5), 3)), 24u);
  EXPECT_EQ(corners(grown(region_of({{0, 0}, {9, 0}, {9, 9}, {0, 9}}), -2)), 4u);
}

TEST(Offset, StraightSidesAreExact) {
  const Box inner = bounds(grown(region_of({{0, 0}, {30, 0}, {30, 20}, {0, 20}}), -3.048));
  EXPECT_NEAR(inner.low.x, 3.048, 3 * kGrid);
  EXPECT_NEAR(inner.high.y, 20 - 3.048, 3 * kGrid);
}

TEST(Offset, WhatIsNarrowerThanTwiceTheOffsetIsGone) {
  EXPECT_TRUE(grown(region_of({{0, 0}, {30, 0}, {30, 5.9}, {0, 5.9}}), -3).empty());
  const Region holed = subtract(region_of({{0, 0}, {30, 0}, {30, 30}, {0, 30}}), buffered(Point{15, 15}, 2));
  EXPECT_TRUE(grown(holed, 2.1)[0].holes.empty());
}

TEST(Offset, OfNoWidthIsTheThingItselfAndOfAllTheWorldCoversThePlan) {
  const Region square = region_of({{0, 0}, {3, 0}, {3, 3}, {0, 3}});
  EXPECT_EQ(grown(square, 0), square);
  EXPECT_TRUE(grown({}, 3).empty());
  EXPECT_TRUE(buffered(Polyline{}, 3).empty());
  EXPECT_TRUE(buffered(Point{1, 1}, 0).empty());
  EXPECT_FALSE(buffered(Polyline{{0, 0}, {0, 30}}, 1e-300).empty());
  EXPECT_TRUE(contains(grown(square, 1e300), Point{-kLargestPlan, kLargestPlan}));
  EXPECT_TRUE(grown(square, -1e300).empty());
}

TEST(Offset, TurnsAndMovesWithItsShape) {
  const Ring lot = {{0, 0}, {31, 3}, {28, 19}, {14, 11}, {3, 22}};
  Ring moved;
  for (Point p : lot) moved.push_back(Point{210, -77} + rotated(p, 0.9));
  for (double by : {-2.5, 2.5})
    EXPECT_NEAR(area(grown(region_of(lot), by)), area(grown(region_of(moved), by)), 1e-2);
}
