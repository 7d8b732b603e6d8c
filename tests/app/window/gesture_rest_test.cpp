// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/gesture_rest.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "app/support/wait.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

Plan with_circuits(int circuits) {
  Plan plan = sample::half_acre();
  plan.wishes.circuits = circuits;
  plan.thermal.years = 1;
  return plan;
}

bool settled(const Document& document) {
  return wait_until([&] { return !document.stale(); });
}

}  // namespace

TEST(GestureRest, AnAnswerOnTheWayIsNotSettledUntilThePointerRests) {
  Document document;
  GestureRest gesture(document);
  QSignalSpy rested(&gesture, &GestureRest::rested);
  document.commit(with_circuits(2), "Set up");
  ASSERT_TRUE(settled(document));
  EXPECT_FALSE(gesture.unsettled());
  document.preview(with_circuits(3));
  EXPECT_TRUE(gesture.unsettled());
  ASSERT_TRUE(settled(document));
  ASSERT_TRUE(wait_until([&] { return rested.count() == 1; }));
  EXPECT_FALSE(gesture.unsettled());
}

// Moves 300 ms apart, each answered before the next: pale and strong do not alternate with every one of them.
TEST(GestureRest, ASlowDragStaysPaleFromMoveToMove) {
  Document document;
  GestureRest gesture(document);
  QSignalSpy rested(&gesture, &GestureRest::rested);
  document.commit(with_circuits(2), "Set up");
  ASSERT_TRUE(settled(document));
  for (int move = 0; move < 6; ++move) {
    document.preview(with_circuits(1 + move % 3));
    QTest::qWait(300);
  }
  EXPECT_LE(rested.count(), 1);  // before it is known to be slow
  ASSERT_TRUE(wait_until([&] { return rested.count() > 0 && !gesture.unsettled(); }));
}

TEST(GestureRest, LettingGoSettlesAtOnce) {
  Document document;
  GestureRest gesture(document);
  document.commit(with_circuits(2), "Set up");
  ASSERT_TRUE(settled(document));
  document.preview(with_circuits(3));
  document.preview(std::nullopt);
  ASSERT_TRUE(settled(document));
  EXPECT_FALSE(gesture.unsettled());
}
