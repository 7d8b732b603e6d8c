// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/wall_list.h"

#include <gtest/gtest.h>

#include <QCheckBox>

#include "support/sample_plans.h"

using namespace underlawn;

namespace {

QStringList texts_of(const Plan& plan) {
  Document document;
  document.commit(plan, "Drawn");
  const WallList list(document);
  QStringList all;
  for (const QCheckBox* box : list.findChildren<QCheckBox*>()) all << box->text();
  return all;
}

}  // namespace

TEST(WallList, SaysWhichBuildingWhereThereAreSeveral) {
  Plan plan = sample::half_acre();
  const QStringList one = texts_of(plan);
  ASSERT_FALSE(one.isEmpty());
  for (const QString& text : one) EXPECT_FALSE(text.contains(':')) << text.toStdString();
  Feature barn;
  barn.id = 900;
  barn.kind = FeatureKind::house;
  barn.name = "Barn";
  barn.points = {{50, 40}, {60, 40}, {60, 48}, {50, 48}};
  plan.site.features.push_back(barn);
  const QStringList two = texts_of(plan);
  EXPECT_EQ(two.size(), one.size() + 4);
  EXPECT_EQ(two.filter("Barn: ").size(), 4);
  for (const QString& text : two) EXPECT_TRUE(text.contains(": ")) << text.toStdString();
}
