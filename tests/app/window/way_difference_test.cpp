// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/way_difference.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <memory>

namespace underlawn {
namespace {

QStringList texts(const Way& a, const Way& b, const Plan& plan) {
  const std::unique_ptr<QWidget> made(way_difference(a, b, plan));
  QStringList all;
  for (const QLabel* label : made->findChildren<QLabel*>()) all << label->text();
  return all;
}

// 29,535.6 and 30,567.4 are 1,031.8 apart, 89.74 and 86.96 degrees F are 2.78: as shown, 1,031 and 2.7.
TEST(WayDifference, IsThatOfTheFiguresBesideIt) {
  Plan plan;
  plan.units = UnitSystem::us;
  Way a, b;
  a.cost = 29535.6;
  b.cost = 30567.4;
  a.coldest = b.coldest = -1;
  a.warmest = (89.74 - 32) / 1.8;
  b.warmest = (86.96 - 32) / 1.8;
  const QStringList all = texts(a, b, plan);
  EXPECT_TRUE(all.contains("29,536") && all.contains("30,567")) << all.join(" | ").toStdString();
  EXPECT_TRUE(all.contains("+1,031")) << all.join(" | ").toStdString();
  EXPECT_TRUE(all.contains("−2.7 °F")) << all.join(" | ").toStdString();
}

TEST(WayDifference, SaysWhatIsTheSame) {
  Way a, b;
  a.circuits = b.circuits = 4;
  EXPECT_TRUE(texts(a, b, Plan{}).contains("same"));
}

}  // namespace
}  // namespace underlawn
