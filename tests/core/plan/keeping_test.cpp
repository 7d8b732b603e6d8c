// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/keeping.h"

#include <gtest/gtest.h>

#include <numbers>

#include "files/plan_file.h"
#include "layout/header_groups.h"
#include "plan/edits.h"
#include "plan/solve.h"
#include "plan/ways.h"
#include "support/sample_plans.h"

namespace underlawn {

namespace {

Layout shown() {
  Layout layout;
  Trench field, supply, locked;
  field.head = {1, 2};
  field.end = {31, 2};
  supply = field;
  supply.role = TrenchRole::supply;
  locked = field;
  locked.locked = true;
  layout.trenches = {field, supply, locked};
  return layout;
}

}  // namespace

TEST(Keeping, WhatIsMovedOnTheLotLeavesTheTrenchesNearWhereTheyLay) {
  const Plan before = sample::half_acre();
  const Plan moved = edit::moved_lot(before, {1, 0});
  const std::vector<Segment> lay = {{{1, 2}, {31, 2}}};
  EXPECT_EQ(keeping(before, moved, shown()).wishes.kept, lay);
}

TEST(Keeping, TheRunIsKeptWithTheTrenches) {
  const Plan before = sample::half_acre();
  Layout layout = shown();
  layout.run.line = {{0, 0}, {0, 1}, {1, 2}};
  const Plan moved = edit::moved_lot(before, {1, 0});
  EXPECT_EQ(keeping(before, moved, layout).wishes.kept_run, layout.run.line);
}

TEST(Keeping, WhatIsAskedOfTheLoopArrangesAfresh) {
  const Plan before = sample::half_acre();
  Plan after = before;
  after.wishes.circuits = 2;
  EXPECT_EQ(keeping(before, after, shown()), after);
}

TEST(Keeping, AnEditThatSaysWhatIsKeptIsLeftAlone) {
  Plan before = sample::half_acre();
  before.wishes.kept = {{{5, 5}, {9, 5}}};
  Plan afresh = edit::moved_lot(before, {1, 0});
  afresh.wishes.kept.clear();
  EXPECT_TRUE(keeping(before, afresh, shown()).wishes.kept.empty());
}

TEST(Keeping, NothingShownKeepsWhatWasKept) {
  Plan before = sample::half_acre();
  before.wishes.kept = {{{5, 5}, {9, 5}}};
  const Plan moved = edit::moved_lot(before, {1, 0});
  EXPECT_EQ(keeping(before, moved, Layout{}).wishes.kept, before.wishes.kept);
}

namespace {

// The farthest that a line runs from another, at places 0.1 m apart.
double strays(const Polyline& line, const Polyline& from) {
  double most = 0;
  for (std::size_t i = 1; i < line.size(); ++i)
    for (double at = 0; at <= 1; at += 0.1 / std::max(0.1, distance(line[i - 1], line[i]))) {
      const Point p = line[i - 1] + at * (line[i] - line[i - 1]);
      double least = 1e9;
      for (std::size_t k = 1; k < from.size(); ++k)
        least = std::min(least, distance(Segment{from[k - 1], from[k]}, p));
      most = std::max(most, least);
    }
  return most;
}

}  // namespace

// A lot corner led out and round, 42 mm a move: where trenches stay the run stays too, though two ways to the
// header cost much the same.
TEST(Keeping, TheRunStaysWhereItLayWhileACornerIsDragged) {
  Plan plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/kestrel-bend.underlawn")->value;
  const Outcome outcome = solve(plan);
  Layout shown = outcome.layout;
  const Point start = plan.site.lot[1].at;
  for (int move = 1; move <= 20; ++move) {
    const double turn = 2 * std::numbers::pi * move / 300;
    Plan next = plan;
    next.site.lot[1].at = start + Point{2 * std::sin(turn), 2 * (1 - std::cos(turn))};
    next = keeping(plan, next, shown);
    Layout now = make_layout(next.site, next.wishes, outcome.coil);
    ASSERT_EQ(now.trenches.size(), shown.trenches.size());
    EXPECT_LT(std::max(strays(now.run.line, shown.run.line), strays(shown.run.line, now.run.line)), 0.5)
        << "move " << move;
    plan = std::move(next);
    shown = std::move(now);
  }
}

namespace {

std::vector<Segment> trenches_of(const Layout& layout) {
  std::vector<Segment> all;
  for (const Trench& t : layout.trenches) all.push_back({t.head, t.end});
  return all;
}

class HeldWhereItLies : public testing::TestWithParam<const char*> {
 protected:
  HeldWhereItLies() {
    plan_ = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + GetParam() + ".underlawn")->value;
    const Outcome outcome = solve(plan_);
    coil_ = outcome.coil;
    layout_ = outcome.layout;
  }
  Layout after(const Plan& held) const {
    const Plan plan = keeping(plan_, held, layout_);
    return make_layout(plan.site, plan.wishes, coil_);
  }
  Plan plan_;
  Coil coil_;
  Layout layout_;
};

}  // namespace

// The heads of a header need not lie on one straight line, as that does to which it is held.
TEST_P(HeldWhereItLies, AHeaderLeavesTheTrenchesWhereTheyAre) {
  Plan held = plan_;
  held.wishes.header_on = line_of_header(layout_, 1);
  ASSERT_TRUE(held.wishes.header_on);
  const Layout l = after(held);
  EXPECT_EQ(trenches_of(l), trenches_of(layout_));
}

TEST_P(HeldWhereItLies, ARunLeavesTheTrenchesWhereTheyAre) {
  Plan held = plan_;
  held.wishes.run_by.assign(layout_.run.line.begin() + 1, layout_.run.line.end());
  const Layout l = after(held);
  EXPECT_EQ(l.trenches.size(), layout_.trenches.size());
  EXPECT_NEAR(l.run.length, layout_.run.length, 0.01);
  for (std::size_t i = 1; i < l.run.line.size(); ++i)
    EXPECT_GT(distance(l.run.line[i - 1], l.run.line[i]), kSamePlace);
  EXPECT_EQ(solve(keeping(plan_, held, layout_)).layout, l);
}

TEST_P(HeldWhereItLies, ATrenchLeavesRoomForTheOthers) {
  for (const Trench& t : layout_.trenches) {
    if (t.role != TrenchRole::field) continue;
    Plan held = plan_;
    held.wishes.locked = {{t.head, t.end}};
    const Layout l = after(held);
    EXPECT_EQ(l.trenches.size(), layout_.trenches.size()) << t.number;
    EXPECT_TRUE(l.troubles.empty()) << t.number << ": " << l.troubles.front().message();
  }
}

// Nothing moves, and header and run are joined as well as before.
TEST_P(HeldWhereItLies, ATrenchLeavesTheOthersWhereTheyAre) {
  const auto dug = [](const Layout& l) { return l.header.length + l.run.length; };
  for (const Trench& t : layout_.trenches) {
    if (t.role != TrenchRole::field) continue;
    Plan held = plan_;
    held.wishes.locked = {{t.head, t.end}};
    const Layout l = after(held);
    EXPECT_TRUE(same_trenches(l, layout_, 1e-6)) << t.number;
    EXPECT_LE(dug(l), dug(layout_) + 0.05) << t.number;
  }
}

INSTANTIATE_TEST_SUITE_P(, HeldWhereItLies, testing::Values("alder-lane", "kestrel-bend"),
                         [](const auto& sample) {
                           return std::string(sample.param).starts_with("alder") ? "AlderLane"
                                                                                 : "KestrelBend";
                         });

}  // namespace underlawn
