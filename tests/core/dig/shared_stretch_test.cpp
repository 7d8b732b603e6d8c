// SPDX-License-Identifier: GPL-3.0-or-later
#include <random>

#include "dig/dig.h"

namespace underlawn {
namespace {

Trench supply(Point head, Point end, double width = 1) {
  Trench t;
  t.role = TrenchRole::supply;
  t.head = head;
  t.end = end;
  t.width = width;
  return t;
}

}  // namespace

TEST(SharedStretch, IsTheWholeTrenchWhenTheRunPassesThroughIt) {
  EXPECT_DOUBLE_EQ(stretch_in_supply_trenches({{0, 0}, {60, 0}}, {supply({20, 0}, {50, 0})}), 30);
  EXPECT_DOUBLE_EQ(stretch_in_supply_trenches({{0, 0}, {60, 0}}, {supply({50, 0}, {20, 0})}), 30);
}

TEST(SharedStretch, IsOnlyThePartThatTheRunUses) {
  EXPECT_DOUBLE_EQ(stretch_in_supply_trenches({{0, 0}, {60, 0}}, {supply({50, 0}, {90, 0})}), 10);
  EXPECT_DOUBLE_EQ(stretch_in_supply_trenches({{0, 0}, {30, 0}, {30, 30}}, {supply({20, 0}, {50, 0})}), 10.5);
}

TEST(SharedStretch, TrenchesOfTheFieldAndTrenchesBesideTheRunShareNothing) {
  Trench field = supply({20, 0}, {50, 0});
  field.role = TrenchRole::field;
  EXPECT_EQ(stretch_in_supply_trenches({{0, 0}, {60, 0}}, {field}), 0);
  EXPECT_EQ(stretch_in_supply_trenches({{0, 0}, {60, 0}}, {supply({20, 3}, {50, 3})}), 0);
  EXPECT_EQ(stretch_in_supply_trenches({}, {supply({20, 3}, {50, 3})}), 0);
  EXPECT_EQ(stretch_in_supply_trenches({{0, 0}, {60, 0}}, {supply({20, 0}, {20, 0})}), 0);
}

// Judged by counting points of the line that lie on the floor.
TEST(SharedStretch, AgreesWithCountingForRandomRuns) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> at(0, 60), widths(0.3, 8);
  for (int i = 0; i < 200; ++i) {
    const Polyline line = {{at(random), at(random)}, {at(random), at(random)}, {at(random), at(random)}};
    const Trench t = supply({at(random), at(random)}, {at(random), at(random)}, widths(random));
    const Point along = unit(t.end - t.head);
    const int steps = 20'000;
    double counted = 0;
    for (std::size_t leg = 1; leg < line.size(); ++leg)
      for (int k = 0; k < steps; ++k) {
        const Point p = line[leg - 1] + (k + 0.5) / steps * (line[leg] - line[leg - 1]) - t.head;
        const double s = dot(p, along);
        const bool on = s >= 0 && s <= distance(t.head, t.end) && std::abs(cross(along, p)) <= t.width / 2;
        if (on) counted += distance(line[leg - 1], line[leg]) / steps;
      }
    EXPECT_NEAR(stretch_in_supply_trenches(line, {t}), counted, 0.02);
  }
}

}  // namespace underlawn
