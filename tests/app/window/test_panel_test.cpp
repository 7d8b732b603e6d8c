// SPDX-License-Identifier: GPL-3.0-or-later
// The pressure test in the flow panel: readings give a verdict in words.
#include "window/test_panel.h"

#include <gtest/gtest.h>

#include <QPushButton>
#include <QTableWidget>

#include "app/support/wait.h"
#include "flow/test_band.h"
#include "support/sample_plans.h"
#include "window/readings_table.h"

using namespace underlawn;

namespace {

struct TestPanelTest : testing::Test {
  Document document;

  void SetUp() override { document.commit(sample::half_acre(), "Drawn"); }
  bool current(TestPanel& panel) {
    return wait_until([&] { return !document.stale() && !panel.at_work(); });
  }
  // What the gauge shows of this plan's loop with a leak of `leak` m3/s, each minute of the shut-in.
  QByteArray log(double leak) {
    const auto loop = volume_of(document.outcome()->flow->loop);
    const auto planned = planned_test(document.plan().test, loop);
    LoopState state = planned->state;
    state.leak = leak;
    state.leak_pressure = planned->pressure.at_gauge;
    const auto curve = test_curve(planned->programme, loop, state);
    QByteArray text = "time_s,pressure_kpa\n";
    const double start = shut_in_start(planned->programme), end = programme_end(planned->programme);
    for (double t = 0; t <= end - start; t += 60)
      text += QByteArray::number(t) + "," + QByteArray::number(curve->pressure_at(start + t) / 1000, 'f', 3) +
              "\n";
    return text;
  }
};

}  // namespace

TEST_F(TestPanelTest, ReadingsOfASoundLoopAreOneEntryAndFoundSound) {
  TestPanel panel(document);
  ASSERT_TRUE(current(panel));
  ASSERT_NE(document.outcome()->flow, nullptr);
  panel.readings()->take_text(log(0));
  EXPECT_EQ(document.undo_name(), "Readings of the test");
  EXPECT_EQ(document.plan().test.readings.size(), 61U);
  ASSERT_TRUE(current(panel));
  EXPECT_EQ(panel.verdict()->value_of("Verdict"), "The loop is sound");
  document.undo();
  EXPECT_TRUE(document.plan().test.readings.empty());
}

TEST_F(TestPanelTest, ReadingsOfALoopThatLosesAGlassAMinuteAreSuspected) {
  TestPanel panel(document);
  ASSERT_TRUE(current(panel));
  panel.readings()->take_text(log(0.2 / 60 / 1000));
  ASSERT_TRUE(current(panel));
  EXPECT_EQ(panel.verdict()->value_of("Verdict"), "A leak is suspected");
}

TEST_F(TestPanelTest, ChartShowsTheCurvesAndThenTheReadings) {
  TestPanel panel(document);
  ASSERT_TRUE(current(panel));
  ASSERT_EQ(panel.chart()->chart().lines.size(), 2U);
  panel.readings()->take_text(log(0));
  ASSERT_TRUE(current(panel));
  const Chart& chart = panel.chart()->chart();
  ASSERT_EQ(chart.lines.size(), 3U);
  EXPECT_EQ(chart.lines[2].points.size(), 61U);
  // Of a sound loop every reading lies within the bounds drawn.
  for (const QPointF& read : chart.lines[2].points)
    for (const ChartBand::Span& s : chart.bands[0].spans)
      if (std::abs(s.x - read.x()) < 1e-6) {
        EXPECT_GE(read.y(), s.low);
        EXPECT_LE(read.y(), s.high);
      }
}

TEST_F(TestPanelTest, ReboundAndWaterPumpedInAreJudgedToo) {
  document.commit(
      [&] {
        Plan plan = document.committed();
        plan.test.procedure = TestProcedure::rebound;
        return plan;
      }(),
      "Procedure");
  TestPanel panel(document);
  ASSERT_TRUE(current(panel));
  panel.readings()->take_text(log(0));
  ASSERT_TRUE(current(panel));
  EXPECT_EQ(panel.verdict()->value_of("ASTM F2164, all within 5 % of the first"), "yes");
  EXPECT_EQ(panel.verdict()->value_of("Air, by the water pumped in"), QString());
  document.commit(
      [&] {
        Plan plan = document.committed();
        plan.test.pumped = 0.2 * document.outcome()->flow->volume;
        return plan;
      }(),
      "Pumped");
  ASSERT_TRUE(current(panel));
  EXPECT_NE(panel.verdict()->value_of("Air, by the water pumped in"), QString());
  EXPECT_NE(panel.verdict()->value_of("Verdict"), "The loop is sound") << "a fifth of the loop is air";
}

TEST_F(TestPanelTest, TableThatIsNoLogIsSaidAndNotCommitted) {
  TestPanel panel(document);
  const Plan before = document.plan();
  panel.readings()->take_text("hello\nworld\n");
  EXPECT_EQ(document.plan(), before);
}

TEST_F(TestPanelTest, ReadingIsTypedInPlace) {
  TestPanel panel(document);
  document.commit(
      [&] {
        Plan plan = document.committed();
        plan.units = UnitSystem::metric;
        plan.test.readings = {{0, 600e3, {}}, {300, 590e3, {}}};
        return plan;
      }(),
      "Read");
  panel.readings()->table()->item(1, 1)->setText("575");
  EXPECT_NEAR(document.plan().test.readings[1].pressure, 575e3, 1);
  panel.readings()->table()->item(1, 0)->setText("10");
  EXPECT_NEAR(document.plan().test.readings[1].time, 600, 1e-9) << "bare numbers are minutes";
}

// What nobody read off a gauge passes no test.
TEST_F(TestPanelTest, RowsThatWereAddedAreBlankAndCountForNothing) {
  TestPanel panel(document);
  ASSERT_TRUE(current(panel));
  QPushButton* add = nullptr;
  for (QPushButton* button : panel.findChildren<QPushButton*>())
    if (button->text() == "Add a reading") add = button;
  ASSERT_NE(add, nullptr);
  for (int i = 0; i < 13; ++i) add->click();
  EXPECT_TRUE(document.plan().test.readings.empty());
  ASSERT_TRUE(current(panel));
  EXPECT_TRUE(panel.verdict()->text().isEmpty()) << panel.verdict()->text().toStdString();
  QTableWidget* table = panel.readings()->table();
  ASSERT_EQ(table->rowCount(), 1);
  for (int c = 0; c < table->columnCount(); ++c) EXPECT_EQ(table->item(0, c)->text(), "");
  table->item(0, 0)->setText("5");
  EXPECT_TRUE(document.plan().test.readings.empty());
  EXPECT_TRUE(panel.readings()->wrong().contains("pressure"));
  table->item(0, 1)->setText("87");
  ASSERT_EQ(document.plan().test.readings.size(), 1U);
  EXPECT_NEAR(document.plan().test.readings[0].time, 300, 1e-9);
  EXPECT_NEAR(document.plan().test.readings[0].pressure, 87 * 6894.757, 10);
  EXPECT_FALSE(panel.readings()->has_blank());
}

TEST_F(TestPanelTest, SafetyIsAlwaysInSight) {
  document.commit(Plan{}, "Nothing drawn");
  TestPanel panel(document);
  bool said = false;
  for (QLabel* label : panel.findChildren<QLabel*>())
    said |= !label->isHidden() && label->text().contains("nobody in the trench");
  EXPECT_TRUE(said);
}
