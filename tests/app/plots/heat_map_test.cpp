// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/heat_map.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QCoreApplication>
#include <QSignalSpy>
#include <QSlider>
#include <QTest>

#include "app/support/wait.h"
#include "canvas/canvas.h"
#include "plots/temperatures_panel.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

struct HeatMapTest : testing::Test {
  Document document;
  Selection selection;
  Canvas canvas{document, selection};
  HeatMap map{document, canvas};

  void SetUp() override {
    canvas.resize(900, 700);
    canvas.show();
    document.commit(sample::half_acre(), "Drawn");
    ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
    ASSERT_TRUE(document.outcome()->temperatures);
    ASSERT_TRUE(QTest::qWaitForWindowActive(&canvas));  // what has the keyboard is drawn with a frame
  }
  void turn_on() {
    map.set_on(true);
    ASSERT_TRUE(wait_until([&] { return map.current(); }));
  }
  QImage seen() { return canvas.grab().toImage(); }
};

}  // namespace

TEST_F(HeatMapTest, IsWorkedOutOnlyWhileItIsOnAndLeavesTheDrawingAsItWas) {
  const QImage plain = seen();
  EXPECT_FALSE(map.ready());
  turn_on();
  EXPECT_NE(seen(), plain);
  map.set_on(false);
  EXPECT_EQ(seen(), plain);
}

TEST_F(HeatMapTest, TurnedOffInTheMidstOfItsWorkItIsMadeAfreshWhenItIsOnAgain) {
  map.set_on(true);
  map.set_on(false);
  turn_on();
}

TEST_F(HeatMapTest, OfAPlanWithoutALotLineThereIsNone) {
  Plan plan = sample::half_acre();
  plan.site = {};
  plan.wishes.given = {{{0, 0}, {30, 0}}};
  document.commit(plan, "Without a lot");
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  ASSERT_TRUE(document.outcome()->temperatures);
  map.set_on(true);
  EXPECT_FALSE(map.current());
  EXPECT_TRUE(map.words().contains("lot line")) << map.words().toStdString();
}

TEST_F(HeatMapTest, TheSliderAndTheYearChangeTheImage) {
  turn_on();
  map.day()->setValue(20);
  const QImage january = map.image();
  EXPECT_TRUE(map.words().contains("21 Jan")) << map.words().toStdString();
  QTest::keyClick(map.day(), Qt::Key_PageUp);
  EXPECT_EQ(map.day()->value(), 50);
  EXPECT_NE(map.image(), january);
  map.day()->setValue(20);
  EXPECT_EQ(map.image(), january);
  ASSERT_GT(map.year()->count(), 1);
  map.year()->setCurrentIndex(0);
  EXPECT_NE(map.image(), january);
}

TEST_F(HeatMapTest, AMapOfThePlanBeforeIsNeverCurrent) {
  turn_on();
  Plan plan = document.committed();
  plan.wishes.trench_depth += 0.3;
  document.commit(plan, "Deeper");
  EXPECT_FALSE(map.current());
  EXPECT_TRUE(map.words().contains("before")) << map.words().toStdString();
  ASSERT_TRUE(wait_until([&] { return map.current(); }));
  EXPECT_FALSE(map.words().contains("before"));
}

TEST_F(HeatMapTest, EscOnTheCardTurnsItOff) {
  turn_on();
  QSignalSpy closed(&map, &HeatMap::closed);
  QTest::keyClick(&map, Qt::Key_Escape);
  EXPECT_EQ(closed.count(), 1);
  EXPECT_FALSE(map.on());
}

TEST_F(HeatMapTest, ThePanelShowsWaterGroundAndLoadAndPalesWhatIsOfAnEarlierPlan) {
  TemperaturesPanel panel(document);
  panel.resize(360, 900);
  panel.show();
  const Chart& water = panel.water()->chart();
  ASSERT_TRUE(water.has_data());
  EXPECT_EQ(water.limits.size(), 2u);
  ASSERT_FALSE(water.marks.empty());
  EXPECT_NEAR(water.marks[0].at.y(), document.outcome()->temperatures->simulation.coldest, 1e-9);
  EXPECT_EQ(panel.ground()->chart().lines.size(), 4u);
  double heating = 0, bars = 0;
  for (double h : document.outcome()->surroundings->house.heating) heating += h * 3600;
  for (int series : {0, 1})
    for (double v : panel.load()->chart().bars[static_cast<std::size_t>(series)].values) bars += v;
  EXPECT_NEAR(bars, heating, 1e-6 * heating);
  EXPECT_FALSE(water.stale);
  Plan plan = document.committed();
  plan.wishes.trench_depth += 0.3;
  document.commit(plan, "Deeper");
  if (document.stale()) {
    EXPECT_TRUE(wait_until([&] { return panel.water()->chart().stale || !document.stale(); }));
  }
}

}  // namespace underlawn
