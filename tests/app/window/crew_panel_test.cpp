// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/crew_panel.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMouseEvent>
#include <QScrollArea>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <set>

#include "app/support/wait.h"
#include "canvas/canvas.h"
#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "plan/solve.h"
#include "plots/crew_chart.h"
#include "report/headline.h"
#include "support/sample_plans.h"
#include "window/column_grip.h"
#include "window/main_window.h"
#include "window/side_column.h"

using namespace underlawn;

namespace {

struct CrewPanelTest : testing::Test {
  QTemporaryDir folder;
  MainWindow window{folder.filePath("kept")};
  CrewPanel* panel = window.side()->findChild<CrewPanel*>();

  void SetUp() override {
    Plan plan = sample::half_acre();
    plan.thermal.years = 1;
    window.document().commit(plan, "Drawn");
    window.resize(1280, 900);
    window.show();
    QApplication::setActiveWindow(&window);
    window.actions().action("panel.crew")->trigger();
    ASSERT_TRUE(wait_until([&] {
      const auto* outcome = window.document().outcome();
      return outcome != nullptr && outcome->calendar != nullptr && !window.document().stale();
    }));
    QCoreApplication::processEvents();
  }
  void TearDown() override { window.document().start_new(); }
  bool says(const QString& words) {
    for (QLabel* label : panel->findChildren<QLabel*>())
      if (label->text().contains(words)) return true;
    return false;
  }
  QComboBox* box(const QString& name) {
    for (QComboBox* b : panel->findChildren<QComboBox*>())
      if (b->accessibleName() == name) return b;
    return nullptr;
  }
};

}  // namespace

TEST_F(CrewPanelTest, KeysWalkThroughTheTasksAndTellOfThem) {
  CrewChart* chart = panel->chart();
  ASSERT_GT(chart->height(), 100);
  chart->setFocus();
  QTest::keyClick(chart, Qt::Key_Home);
  ASSERT_GE(chart->chosen(), 0);
  EXPECT_TRUE(says(chart->said()));
  const auto& tasks = window.document().outcome()->calendar->tasks;
  double before = -1;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const double begin = tasks[static_cast<std::size_t>(chart->chosen())].begin;
    EXPECT_GE(begin, before);
    before = begin;
    QTest::keyClick(chart, Qt::Key_Right);
  }
  QTest::keyClick(chart, Qt::Key_Escape);
  EXPECT_EQ(chart->chosen(), -1);
}

TEST_F(CrewPanelTest, ThePointerFindsTheBarThatIsThere) {
  CrewChart* chart = panel->chart();
  const auto& tasks = window.document().outcome()->calendar->tasks;
  std::set<int> found;
  for (int y = 0; y < chart->height(); y += 4)
    for (int x = 0; x < chart->width(); x += 3) {
      QTest::mouseMove(chart, {x, y});
      if (chart->chosen() >= 0) found.insert(chart->chosen());
    }
  // Everything that takes a quarter of an hour can be pointed at.
  for (std::size_t i = 0; i < tasks.size(); ++i)
    EXPECT_TRUE(found.contains(static_cast<int>(i)) || tasks[i].end - tasks[i].begin < 900) << i;
}

TEST_F(CrewPanelTest, ChoosingTheSideMachinesComeInIsOneEntry) {
  QComboBox* access = box("Machines come in");
  ASSERT_NE(access, nullptr);
  ASSERT_EQ(access->count(), static_cast<int>(window.document().plan().site.lot.size()) + 1);
  access->setCurrentIndex(2);
  emit access->activated(2);
  ASSERT_TRUE(window.document().plan().dig.access.has_value());
  const auto& lot = window.document().plan().site.lot;
  EXPECT_EQ(*window.document().plan().dig.access, 0.5 * (lot[1].at + lot[2].at));
  EXPECT_EQ(access->currentIndex(), 2);
  window.document().undo();
  EXPECT_FALSE(window.document().plan().dig.access.has_value());
}

TEST_F(CrewPanelTest, NamesEveryStepInItsOrder) {
  for (const DigStep& step : window.document().outcome()->order->steps)
    EXPECT_TRUE(says(QString::fromStdString(step_name(step)))) << step_name(step);
}

TEST_F(CrewPanelTest, TheDigLayerIsOffUntilAskedFor) {
  EXPECT_FALSE(window.canvas()->paint_options().dig);
  window.actions().action("view.dig")->trigger();
  EXPECT_TRUE(window.canvas()->paint_options().dig);
}

// Where one more hour takes a day off the lot, days and money are those of the plan solved with it.
TEST_F(CrewPanelTest, SaysWhereOneMoreHourPays) {
  Plan plan = window.document().plan();
  const auto days_at = [&](double hours) {
    Plan p = plan;
    p.crew.day_length = hours * 3600;
    return solve(p).calendar->days_worked;
  };
  int paid = 0, unpaid = 0;
  for (double hours = 6; hours <= 9.5 && (paid == 0 || unpaid == 0); hours += 0.5) {
    const int now = days_at(hours), then = days_at(hours + 1);
    plan.crew.day_length = hours * 3600;
    window.document().commit(plan, "Hours");
    ASSERT_TRUE(wait_until([&] { return !window.document().stale(); }));
    QCoreApplication::processEvents();
    const QString words = QString("One more hour a day: ");
    const QString said = QString("%1 days on the lot instead of %2: %3 USD less")
                             .arg(then)
                             .arg(now)
                             .arg((now - then) * plan.wishes.prices.crew_day, 0, 'f', 2);
    QString line;
    for (const QLabel* label : panel->findChildren<QLabel*>())
      for (const QString& part : label->text().split("</p>"))
        if (part.contains(words)) line = part;
    EXPECT_EQ(line.contains(said), then < now) << hours << " " << line.toStdString();
    EXPECT_EQ(line.contains("on the lot instead"), then < now) << hours;
    ++(then < now ? paid : unpaid);
  }
  EXPECT_GT(paid, 0);
}

TEST_F(CrewPanelTest, TheFirstDayIsWhereItIsEntered) {
  const auto first = [&]() -> QLineEdit* {
    for (QLineEdit* edit : panel->findChildren<QLineEdit*>())
      if (edit->accessibleName() == "First day") return edit;
    return nullptr;
  };
  ASSERT_NE(first(), nullptr);
  Plan plan = window.document().plan();
  plan.proposal.start = "2027-06-07";
  window.document().commit(plan, "Promised");
  ASSERT_TRUE(wait_until([&] { return !window.document().stale(); }));
  EXPECT_EQ(first()->text(), "");
  EXPECT_EQ(first()->placeholderText(), "as the proposal says: 2027-06-07");
}

// As on the drawing, where Arabic numbers are those of trenches.
TEST_F(CrewPanelTest, StepsAreCountedInRomanNumeralsAndABarIsExplainedAboveTheBars) {
  EXPECT_TRUE(says("<b>I</b>"));
  EXPECT_TRUE(says("<b>II</b>"));
  EXPECT_FALSE(says("<b>2</b>"));
  const auto labels = panel->findChildren<QLabel*>();
  const auto told =
      std::ranges::find_if(labels, [](QLabel* l) { return l->text().startsWith("Point at a bar"); });
  ASSERT_NE(told, labels.end());
  EXPECT_LT((*told)->mapTo(panel, QPoint()).y(), panel->chart()->mapTo(panel, QPoint()).y());
}

TEST_F(CrewPanelTest, WhatTheOrderIsDrawnWithIsSaidOnTheDrawing) {
  auto* legend = window.canvas()->findChild<QWidget*>("dig_legend");
  ASSERT_NE(legend, nullptr);
  EXPECT_TRUE(legend->isHidden());
  window.actions().action("view.dig")->trigger();
  EXPECT_FALSE(legend->isHidden());
  EXPECT_TRUE(legend->accessibleName().contains("step in the order of digging"));
  EXPECT_TRUE(window.canvas()->rect().contains(legend->geometry()));
  window.actions().action("view.dig")->trigger();
  EXPECT_TRUE(legend->isHidden());
}

TEST_F(CrewPanelTest, TheColumnIsDraggedWiderAndRemembersIt) {
  auto* grip = window.side()->findChild<ColumnGrip*>();
  ASSERT_NE(grip, nullptr);
  const int before = panel->width();
  QTest::mousePress(grip, Qt::LeftButton, {}, QPoint(4, 200));
  QTest::mouseMove(grip, QPoint(-116, 200));
  QMouseEvent move(QEvent::MouseMove, QPointF(-116, 200), grip->mapToGlobal(QPointF(-116, 200)), Qt::NoButton,
                   Qt::LeftButton, {});
  QApplication::sendEvent(grip, &move);
  QTest::mouseRelease(grip, Qt::LeftButton, {}, QPoint(4, 200));
  QCoreApplication::processEvents();
  EXPECT_NEAR(panel->width(), before + 120, 8);
  MainWindow another{folder.filePath("kept too")};
  EXPECT_NEAR(
      another.side()->findChild<CrewPanel*>()->window()->findChild<Headline*>()->parentWidget()->width(),
      364 + 120, 2);
  QSettings().remove("window/side_width");
}
