// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/taping.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "plan/record/taped_text.h"
#include "plan/tape.h"

namespace underlawn {
namespace {

const std::vector<HouseCorner> kCorners = {{"A", {0, 0}}, {"B", {12, 0}}, {"C", {12, 9}}, {"D", {0, 9}}};

Point corner(const std::string& tag) {
  for (const HouseCorner& c : kCorners)
    if (c.tag == tag) return c.at;
  return {};
}

// As a crew reads its tapes: to the centimetre.
BuiltPoint taped(Point p, const std::string& first, const std::string& second,
                 const std::string& third = "") {
  BuiltPoint b;
  const auto read = [&](const std::string& tag) {
    return std::round(100 * std::hypot(p.x - corner(tag).x, p.y - corner(tag).y)) / 100;
  };
  for (const std::string& tag : {first, second, third})
    if (!tag.empty()) b.tapes.push_back({tag, read(tag)});
  const Point a = corner(first), c = corner(second);
  b.left = (c.x - a.x) * (p.y - a.y) - (c.y - a.y) * (p.x - a.x) >= 0;
  return b;
}

TEST(Taping, ExactTapesGiveThePointBackWithinACentimetre) {
  std::mt19937 random(417);
  std::uniform_real_distribution<double> x(-30, 40), y(11, 60);
  double worst = 0;
  for (int i = 0; i < 2000; ++i) {
    const Point p{x(random), y(random)};
    BuiltPoint b;
    b.tapes = {{"D", std::hypot(p.x, p.y - 9)}, {"C", std::hypot(p.x - 12, p.y - 9)}};
    b.left = true;
    const auto found = place_of(kCorners, b, "the head");
    if (cut_angle(p, {0, 9}, {12, 9}) < kFlattestCut) {
      EXPECT_FALSE(found) << p.x << " " << p.y;
      continue;
    }
    ASSERT_TRUE(found);
    worst = std::max(worst, std::hypot(found->at.x - p.x, found->at.y - p.y));
  }
  // b.left is wrong for points that lie right of D-C: none, for all lie north of it.
  EXPECT_LT(worst, 0.01);
}

TEST(Taping, ReadToACentimetreThePointIsWithinItsExpectedError) {
  std::mt19937 random(418);
  std::uniform_real_distribution<double> x(-15, 25), y(14, 40);
  for (int i = 0; i < 500; ++i) {
    const Point p{x(random), y(random)};
    if (cut_angle(p, {0, 9}, {12, 9}) < 1.05 * kFlattestCut) continue;
    const auto found = place_of(kCorners, taped(p, "D", "C", "B"), "the head");
    ASSERT_TRUE(found) << found.error().message();
    EXPECT_LT(std::hypot(found->at.x - p.x, found->at.y - p.y), found->error);
    ASSERT_EQ(found->checks.size(), 1u);
    EXPECT_LT(std::abs(found->checks[0].residual), most_residual(found->checks[0].length, found->error));
  }
}

TEST(Taping, TheResidualIsTapedLessReached) {
  BuiltPoint b = taped({3, 20}, "D", "C", "A");
  b.tapes[2].length += 0.06;
  const auto found = place_of(kCorners, b, "the head");
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->checks[0].residual, 0.06, 0.02);
}

TEST(Taping, TheSideIsTheOneChosen) {
  BuiltPoint b = taped({20, 14}, "B", "C");
  const auto right = place_of(kCorners, b, "the head");
  b.left = !b.left;
  const auto other = place_of(kCorners, b, "the head");
  ASSERT_TRUE(right && other);
  EXPECT_NEAR(right->at.x, 20, 0.05);
  EXPECT_NEAR(other->at.x, 4, 0.05);  // mirrored in the wall x = 12
  EXPECT_NEAR(other->at.y, right->at.y, 1e-9);
}

TEST(Taping, WhatCannotBeIsRefusedWithValueAndBound) {
  const auto code = [](const BuiltPoint& b) {
    const auto found = place_of(kCorners, b, "the head of trench 2");
    if (found) return std::string("taken");
    EXPECT_NE(found.error().message().find("head of trench 2"), std::string::npos);
    EXPECT_FALSE(found.error().value.empty() || found.error().bound.empty() || found.error().advice.empty());
    return found.error().code;
  };
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(code({}), "tapes_missing");
  EXPECT_EQ(code({{{"A", 5}}, true, {}}), "tapes_missing");
  EXPECT_EQ(code({{{"A", 5}, {"Z", 9}}, true, {}}), "tape_corner_unknown");
  EXPECT_EQ(code({{{"A", 5}, {"A", 9}}, true, {}}), "tape_corner_twice");
  EXPECT_EQ(code({{{"A", 5}, {"B", 6}}, true, {}}), "tapes_do_not_meet");   // 11 m over a wall of 12
  EXPECT_EQ(code({{{"A", 5}, {"B", 18}}, true, {}}), "tapes_do_not_meet");  // 13 m more than the other
  EXPECT_EQ(code({{{"A", 5}, {"B", 7.02}}, true, {}}), "tapes_cut_flat");   // on the wall itself
  EXPECT_EQ(code({{{"A", nan}, {"B", 7}}, true, {}}), "tape_no_length");
  EXPECT_EQ(code({{{"A", 1e300}, {"B", 1e300}}, true, {}}), "tape_no_length");
  BuiltPoint wrong = taped({3, 20}, "D", "C", "A");
  wrong.tapes[2].length += 2;
  EXPECT_EQ(code(wrong), "check_tape_off");
}

TEST(Taping, ACheckTapeTellsTheWrongSide) {
  BuiltPoint b = taped({20, 14}, "B", "C", "A");
  b.left = !b.left;
  const auto found = place_of(kCorners, b, "the head");
  ASSERT_FALSE(found);
  EXPECT_EQ(found.error().code, "check_tape_off");
  EXPECT_NE(found.error().advice.find("other side"), std::string::npos);
}

// Two tapes say nothing of their side: whoever leaves it out means the place that was planned, or the one
// that a check tape allows.
TEST(Taping, WithoutASideTheOneNearThePlanIsTaken) {
  std::mt19937 random(421);
  std::uniform_real_distribution<double> x(-20, 32), y(-25, 34), off(-1, 1);
  int taken = 0;
  for (int i = 0; i < 500; ++i) {
    const Point p{x(random), y(random)};
    if (std::abs(p.y - 9) < 4 || cut_angle(p, {0, 9}, {12, 9}) < 0.3) continue;
    BuiltPoint b = taped(p, "D", "C");
    const bool meant = b.left;
    b.left = true;  // as a text without a side is read
    const BuiltPoint likely = on_likely_side(kCorners, b, {{p.x + off(random), p.y + off(random)}});
    EXPECT_EQ(likely.left, meant) << p.x << " " << p.y;
    EXPECT_EQ(likely.tapes, b.tapes);
    ++taken;
  }
  EXPECT_GT(taken, 200);
}

TEST(Taping, ACheckTapeTellsTheSideAgainstThePlan) {
  BuiltPoint b = taped({20, 14}, "B", "C", "A");
  const bool meant = b.left;
  const Point mirrored{4, 14};  // on the other side of the line from B to C
  for (bool left : {true, false}) {
    b.left = left;
    EXPECT_EQ(on_likely_side(kCorners, b, {mirrored}).left, meant);
  }
}

TEST(Taping, WithNothingPlannedTheSideStaysAsItIs) {
  BuiltPoint b = taped({20, 14}, "B", "C");
  for (bool left : {true, false}) {
    b.left = left;
    EXPECT_EQ(on_likely_side(kCorners, b, {}).left, left);
  }
}

TEST(Taping, ATextSaysItsSideOrDoesNot) {
  EXPECT_TRUE(says_side("A 45'-3\", B 31'-6\", left"));
  EXPECT_TRUE(says_side("A 12,5; B 9.605 m; Right"));
  EXPECT_FALSE(says_side("A 45'-3\", B 31'-6\""));
  EXPECT_FALSE(says_side(""));
}

TEST(Taping, WithoutTapesAMarkIsTaken) {
  const auto found = place_of(kCorners, {{}, true, Point{7, 8}}, "the head");
  ASSERT_TRUE(found);
  EXPECT_FALSE(found->taped);
  EXPECT_EQ(found->at, (Point{7, 8}));
}

TEST(TapedText, IsReadAsANotebookHasItAndPrintedSo) {
  const auto us = taped_from_text("a 45'-3\", B 31'-6 1/2\", c 20', RIGHT", UnitSystem::us, "head");
  ASSERT_TRUE(us) << us.error().message();
  ASSERT_EQ(us->tapes.size(), 3u);
  EXPECT_EQ(us->tapes[0].corner, "A");
  EXPECT_NEAR(us->tapes[0].length, 45.25 * 0.3048, 1e-12);
  EXPECT_NEAR(us->tapes[1].length, (31 * 12 + 6.5) * 0.0254, 1e-12);
  EXPECT_FALSE(us->left);
  EXPECT_EQ(print_taped(*us, UnitSystem::us), "A 45'-3\", B 31'-6 1/2\", C 20'-0\", right");
  const auto metric = taped_from_text("A 12,5; B 9.605 m", UnitSystem::metric, "head");
  ASSERT_TRUE(metric);
  EXPECT_DOUBLE_EQ(metric->tapes[0].length, 12.5);
  EXPECT_TRUE(metric->left);
  for (UnitSystem u : {UnitSystem::us, UnitSystem::metric}) {
    const auto again = taped_from_text(print_taped(*us, u), u, "head");
    ASSERT_TRUE(again);
    EXPECT_NEAR(again->tapes[1].length, us->tapes[1].length, 1e-3);
    EXPECT_EQ(again->left, us->left);
  }
  EXPECT_TRUE(taped_from_text("", UnitSystem::us, "head")->tapes.empty());
}

TEST(TapedText, WhatIsNeitherIsRefusedByItsPiece) {
  for (const char* text : {"45'", "A", "A 12,5, B 3", "A twelve", "A 5, B 6, up", "ABCD 5",
                           "A 1,A 1,A 1,A 1,A 1,A 1,A 1,A 1,A 1"}) {
    const auto point = taped_from_text(text, UnitSystem::metric, "Tapes to the head");
    EXPECT_FALSE(point) << text;
  }
}

}  // namespace
}  // namespace underlawn
