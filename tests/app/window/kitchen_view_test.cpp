// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/kitchen_view.h"

#include <gtest/gtest.h>

#include <QTest>

#include "app/support/wait.h"
#include "cost/crew_calendar.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

using namespace underlawn;

TEST(KitchenView, GoesThroughItsScenesByKeyAndLeavesWithEsc) {
  QWidget window;
  window.resize(1200, 800);
  Document document;
  KitchenView view(document, &window);
  document.commit(sample::half_acre(), "a lot");
  view.open();
  window.show();
  ASSERT_TRUE(wait_until([&] { return view.isVisible(); }));
  EXPECT_EQ(view.size(), window.size());
  ASSERT_GT(view.scenes(), 6);
  EXPECT_EQ(view.scene(), 0);
  QTest::keyClick(&view, Qt::Key_Left);
  EXPECT_EQ(view.scene(), 0);
  QTest::keyClick(&view, Qt::Key_Right);
  EXPECT_EQ(view.title(), QString("Day 1 of %1").arg(document.outcome()->calendar->days_worked));
  QTest::keyClick(&view, Qt::Key_End);
  EXPECT_EQ(view.scene(), view.scenes() - 1);
  EXPECT_FALSE(view.grab().toImage().isNull());
  QTest::keyClick(&view, Qt::Key_Right);
  EXPECT_EQ(view.scene(), view.scenes() - 1);
  QTest::keyClick(&view, Qt::Key_Escape);
  EXPECT_FALSE(view.isVisible());
  EXPECT_FALSE(document.can_redo());
}

TEST(KitchenView, DaysBeginWithTheFirstBucketAndEndWithEverythingClosed) {
  const Plan plan = sample::half_acre();
  const Outcome outcome = solve(plan);
  const std::vector<WorkDay> days = work_days(outcome);
  ASSERT_EQ(static_cast<int>(days.size()), outcome.calendar->days_worked);
  for (std::size_t i = 1; i < days.size(); ++i) EXPECT_GE(days[i].dug, days[i - 1].dug);
  EXPECT_GT(days.front().dug, 0);
  EXPECT_EQ(days.back().moment, LotMoment::closed);
  EXPECT_EQ(days.front().moment, LotMoment::digging);
}

TEST(KitchenView, OfAnEmptyPlanHasOneScene) {
  EXPECT_EQ(kitchen_scenes({}, {}).size(), 1u);
}

// The words of the price and of the trees point to who answers and how it is paid: both are told in the end.
TEST(KitchenView, LastTellsWhatMayGoWrongAndWhoAnswers) {
  Plan plan = sample::half_acre();
  plan.proposal.guarantee = "We answer for all of it for ten years.";
  plan.proposal.payment = "Half before, half after.";
  const std::vector<KitchenScene> scenes = kitchen_scenes(plan, solve(plan));
  const QString words = scenes.back().words.join(" ");
  for (const char* part :
       {"A gas or power line is hit.", "What we answer for: We answer for all of it for ten years.",
        "Payment: Half before, half after."})
    EXPECT_TRUE(words.contains(part)) << part;
}
