// SPDX-License-Identifier: GPL-3.0-or-later
// Level floors on a slope: trenches lie along the contour where that saves digging.
#include <gtest/gtest.h>

#include "layout/amounts.h"

namespace underlawn {
namespace {

// 80 m square with 3 m setbacks and a house at its lower edge, rising `slope` m per m towards `uphill`.
Site hillside(double uphill, double slope) {
  Site s;
  for (Point p : {Point{0, 0}, Point{80, 0}, Point{80, 80}, Point{0, 80}}) {
    s.lot.push_back({p, 3});
    s.heights.push_back({p, slope * dot(p, direction(uphill))});
  }
  Feature house;
  house.id = 1;
  house.kind = FeatureKind::house;
  house.points = {{30, 4}, {50, 4}, {50, 14}, {30, 14}};
  s.features.push_back(house);
  s.entry = EntryPoint{1, {40, 14}};
  return s;
}

Wishes wishes(bool level) {
  Wishes w;
  w.circuits = 4;
  w.coil_in_run = false;
  w.level_floor = level;
  return w;
}

Layout laid(const Site& s, const Wishes& w) {
  Coil c;
  c.trench_length = 30;
  c.coil_length = 240;
  return make_layout(s, w, c);
}

double off_contour(const Layout& l, double uphill) {  // rad, 0..pi/2
  return std::abs(std::asin(dot(direction(l.direction), direction(uphill))));
}

TEST(Contour, LevelFloorsTurnTrenchesAlongIt) {
  const double degree = std::numbers::pi / 180;
  for (double uphill : {0.0, 30 * degree, 75 * degree, 90 * degree, 140 * degree}) {
    const Site s = hillside(uphill, 0.12);
    const Layout level = laid(s, wishes(true)), along = laid(s, wishes(false));
    ASSERT_EQ(level.trenches.size(), 4u);
    ASSERT_FALSE(level.run.line.empty());
    EXPECT_LT(off_contour(level, uphill), 6 * degree) << "uphill at " << uphill / degree;
    // Judged by level floors, the layout that does not mind the slope is never less to dig.
    EXPECT_LE(amounts_of(s, wishes(true), level).dug, amounts_of(s, wishes(true), along).dug + 1e-6);
  }
}

TEST(Contour, WithoutHeightsOrWithFloorsThatFollowTheGroundNothingChanges) {
  Site flat = hillside(0.5, 0.12);
  const Layout following = laid(flat, wishes(false));
  flat.heights.clear();
  EXPECT_EQ(laid(flat, wishes(false)), following);
  EXPECT_EQ(laid(flat, wishes(true)), following);
}

TEST(Contour, OtherAimsCountTheDeeperDiggingToo) {
  const double uphill = 0.3;
  const Site s = hillside(uphill, 0.12);
  Wishes w = wishes(true);
  w.aim = Aim::cost;
  const Layout l = laid(s, w);
  ASSERT_EQ(l.trenches.size(), 4u);
  EXPECT_LT(off_contour(l, uphill), 6 * std::numbers::pi / 180);
}

}  // namespace
}  // namespace underlawn
