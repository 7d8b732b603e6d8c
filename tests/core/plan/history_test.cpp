// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/history.h"

#include <gtest/gtest.h>

#include <random>
#include <vector>

#include "plan/edits.h"
#include "support/random_plans.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

Plan with_circuits(int circuits) {
  Plan plan = sample::half_acre();
  plan.wishes.circuits = circuits;
  return plan;
}

}  // namespace

TEST(History, UndoGivesThePlanBeforeAndRedoTheOneAfter) {
  History history(with_circuits(1));
  EXPECT_TRUE(history.commit(with_circuits(2), "two circuits"));
  EXPECT_TRUE(history.commit(with_circuits(3), "three circuits"));
  EXPECT_EQ(history.undo_name(), "three circuits");
  history.undo();
  EXPECT_EQ(history.plan().wishes.circuits, 2);
  EXPECT_EQ(history.undo_name(), "two circuits");
  EXPECT_EQ(history.redo_name(), "three circuits");
  history.redo();
  EXPECT_EQ(history.plan(), with_circuits(3));
  EXPECT_FALSE(history.can_redo());
}

TEST(History, AGestureThatChangesNothingMakesNoEntry) {
  History history(with_circuits(1));
  EXPECT_FALSE(history.commit(with_circuits(1), "nothing"));
  EXPECT_FALSE(history.can_undo());
  EXPECT_EQ(history.undo_name(), "");
}

TEST(History, UndoAndRedoAtTheEndsDoNothing) {
  History history(with_circuits(1));
  history.undo();
  history.redo();
  EXPECT_EQ(history.plan().wishes.circuits, 1);
}

TEST(History, ANewGestureAfterUndoForgetsWhatWasUndone) {
  History history(with_circuits(1));
  history.commit(with_circuits(2), "two");
  history.undo();
  history.commit(with_circuits(5), "five");
  EXPECT_FALSE(history.can_redo());
  history.undo();
  EXPECT_EQ(history.plan().wishes.circuits, 1);
}

TEST(History, ModifiedMeansDifferentFromTheSavedPlanHoweverItWasReached) {
  History history(with_circuits(1));
  EXPECT_FALSE(history.modified());
  history.commit(with_circuits(2), "two");
  EXPECT_TRUE(history.modified());
  history.mark_saved();
  EXPECT_FALSE(history.modified());
  history.undo();
  EXPECT_TRUE(history.modified());
  history.commit(with_circuits(2), "two again");
  EXPECT_FALSE(history.modified());
}

TEST(History, ARecoveredPlanIsModifiedUntilItIsSaved) {
  History history(with_circuits(1));
  history.mark_unsaved();
  EXPECT_TRUE(history.modified());
  history.mark_saved();
  EXPECT_FALSE(history.modified());
}

TEST(History, KeepsNoMoreThanItsBoundAndForgetsTheOldestFirst) {
  History history(with_circuits(0));
  for (int i = 1; i <= kMostEntries + 20; ++i) history.commit(with_circuits(i), std::to_string(i));
  int steps = 0;
  while (history.can_undo()) history.undo(), ++steps;
  EXPECT_EQ(steps, kMostEntries - 1);
  EXPECT_EQ(history.plan().wishes.circuits, 21);
}

TEST(History, APlanThatFillsTheMemoryKeepsAtLeastOneStepBack) {
  Plan big = sample::half_acre();
  constexpr std::size_t kNumbers = 0.6 * kMostHistoryBytes / sizeof(double);
  big.thermal.hours.heating.assign(kNumbers, 1.0);
  History history(big);
  for (int i = 0; i < 3; ++i) {
    Plan next = history.plan();
    next.thermal.hours.heating[0] = 10 + i;
    history.commit(std::move(next), "more");
  }
  int steps = 0;
  while (history.can_undo()) history.undo(), ++steps;
  EXPECT_EQ(steps, 1);
  EXPECT_EQ(history.plan().thermal.hours.heating[0], 11);
  EXPECT_TRUE(history.has_forgotten());
}

TEST(History, EveryPlanComesBackAsItWas) {
  std::mt19937_64 random(11);
  std::vector<Plan> all{sample::random_plan(random)};
  History history(all.front());
  for (int i = 0; i < 60; ++i) {
    Plan next = i % 3 == 0 ? sample::random_plan(random) : all.back();
    next.site.north += 0.001;
    if (i % 2 == 0) next = edit::moved_lot(std::move(next), {0.1, 0});
    if (history.commit(next, "x")) all.push_back(std::move(next));  // of a huge number 0.001 changes nothing
  }
  ASSERT_GT(all.size(), 20U);
  for (std::size_t i = all.size(); i-- > 0; history.undo()) ASSERT_EQ(history.plan(), all[i]) << i;
  for (const Plan& plan : all) {
    ASSERT_EQ(history.plan(), plan);
    history.redo();
  }
}

// A long day: what moves is shared with nothing, the rest with what was before.
TEST(History, TwentyThousandGesturesStayInBoundedMemory) {
  Plan plan = sample::half_acre();
  plan.thermal.weather_file.outdoor.assign(8760, 10.0);
  History history(plan);
  for (int i = 0; i < 20'000; ++i) {
    Plan next = edit::moved_feature(history.plan(), history.plan().site.features[i % 3].id,
                                    {i % 2 == 0 ? 0.01 : -0.01, 0.001});
    ASSERT_TRUE(history.commit(std::move(next), "Move"));
  }
  EXPECT_LE(history.bytes(), kMostHistoryBytes);
  EXPECT_LT(history.bytes() / 20'000, 4000U) << "bytes an entry";
}

TEST(History, ANewlyOpenedPlanHasNoPast) {
  History history(with_circuits(1));
  history.commit(with_circuits(2), "two");
  history.reset(with_circuits(7));
  EXPECT_FALSE(history.can_undo());
  EXPECT_FALSE(history.modified());
  EXPECT_EQ(history.plan().wishes.circuits, 7);
}

}  // namespace underlawn
