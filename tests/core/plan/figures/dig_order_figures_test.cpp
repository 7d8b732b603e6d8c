// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the order of digging and the calendar, worked out again from those they name.
#include <gtest/gtest.h>

#include <cmath>

#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

double value(const Figures& all, const std::string& key) {
  const Figure* f = all.find(key);
  EXPECT_NE(f, nullptr) << key;
  return f == nullptr ? std::nan("") : f->value;
}

}  // namespace

TEST(DigOrderFigures, FollowFromWhatTheyName) {
  Plan plan = sample::half_acre();
  plan.thermal.years = 1;
  plan.crew.rain_slack = 0.3;
  const Outcome o = solve(plan);
  ASSERT_NE(o.order, nullptr);
  const Figures& f = o.figures;
  double loose = 0;
  for (std::size_t i = 0; i < o.order->steps.size(); ++i) {
    const DigStep& step = o.order->steps[i];
    const std::string key = "order.step." + std::to_string(i + 1);
    if (step.hauled) {
      loose += step.work.loose;
      EXPECT_EQ(f.find(key + ".spoil_width"), nullptr);
      continue;
    }
    const double width = value(f, key + ".spoil_width");
    EXPECT_NEAR(value(f, key + ".spoil_height"), width / 2 * std::tan(value(f, "ground.repose")), 1e-9);
    EXPECT_NEAR(value(f, key + ".cast"), step.top / 2 + value(f, "order.spoil_off") + width / 2, 1e-9);
  }
  EXPECT_NEAR(value(f, "order.hauled_volume"), loose, 1e-9);
  EXPECT_EQ(value(f, "order.steps"), static_cast<double>(o.order->steps.size()));
  EXPECT_EQ(value(f, "calendar.days"), std::ceil(value(f, "calendar.filled") - 1e-9));
  EXPECT_EQ(value(f, "calendar.reserve"), std::ceil(0.3 * value(f, "calendar.days") - 1e-9));
  EXPECT_GE(value(f, "calendar.tested"), value(f, "calendar.joined"));
  EXPECT_NEAR(value(f, "days.open"), value(f, "calendar.filled"), 1e-9);
  EXPECT_EQ(value(f, "days.paid"), value(f, "calendar.days"));
}

// What the crew is asked for changes the calendar and the bill with it.
TEST(DigOrderFigures, ASlowerMachineStaysLonger) {
  Plan plan = sample::half_acre();
  plan.thermal.years = 1;
  const Outcome fast = solve(plan);
  plan.dig.excavator.cycle *= 3;
  const Outcome slow = solve(plan);
  EXPECT_NEAR(value(slow.figures, "days.digging"), 3 * value(fast.figures, "days.digging"),
              0.3 * value(fast.figures, "days.digging"));
  EXPECT_GT(value(slow.figures, "calendar.filled"), value(fast.figures, "calendar.filled") + 1);
  EXPECT_GT(value(slow.figures, "cost.total"), value(fast.figures, "cost.total"));
}

}  // namespace underlawn
