// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/gesture_rest.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

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
