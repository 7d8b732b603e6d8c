// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/ways_panel.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include "app/support/wait.h"
#include "canvas/canvas.h"
#include "support/sample_plans.h"
#include "window/main_window.h"
#include "window/side_column.h"
#include "window/way_card.h"

using namespace underlawn;

namespace {

struct WaysPanelTest : testing::Test {
  QTemporaryDir folder;
  MainWindow window{folder.filePath("kept")};
  WaysPanel* panel = window.side()->ways_panel();

  void SetUp() override {
    Plan plan = sample::half_acre();
    plan.thermal.years = 1;
    window.document().commit(plan, "Drawn");
    window.resize(1280, 800);
    window.show();
    QApplication::setActiveWindow(&window);
    QTest::mouseMove(window.canvas());  // not on a card, wherever an earlier test left the pointer
  }
  void TearDown() override { window.document().start_new(); }
  void find() {
    window.actions().action("edit.find_ways")->trigger();
    ASSERT_TRUE(wait_until([&] { return !panel->service().busy(); }));
    QCoreApplication::processEvents();
  }
  std::vector<WayCard*> cards() {
    const auto all = panel->findChildren<WayCard*>();
    return {all.begin(), all.end()};
  }
  QPushButton* taker(WayCard* card) { return card->findChild<QPushButton*>(); }
  bool old() {
    for (QLabel* label : panel->findChildren<QLabel*>())
      if (label->text() == "Of an earlier plan.") return label->isVisible();
    return false;
  }
};

}  // namespace

TEST_F(WaysPanelTest, ShowsACardForEachWay) {
  find();
  ASSERT_NE(panel->service().newest(), nullptr);
  EXPECT_EQ(cards().size(), panel->service().newest()->ways.size());
  ASSERT_GE(cards().size(), 3u);
  EXPECT_FALSE(taker(cards()[0])->isEnabled());
  EXPECT_TRUE(taker(cards()[1])->isEnabled());
  EXPECT_FALSE(old());
  for (WayCard* card : cards()) EXPECT_LE(card->geometry().right(), panel->width());
}

TEST_F(WaysPanelTest, TheWayLookedAtLiesOverTheDrawing) {
  find();
  EXPECT_TRUE(window.canvas()->ghosts().empty());
  cards()[1]->setFocus();
  ASSERT_EQ(window.canvas()->ghosts().size(), 1u);
  const auto& ways = panel->service().newest()->ways;
  EXPECT_EQ(window.canvas()->ghosts()[0].layout, ways[1].layout);
  EXPECT_EQ(window.canvas()->ghosts()[0].name.toStdString(), ways[1].sentence);
  emit cards()[2]->looked_at(true);
  EXPECT_EQ(window.canvas()->ghosts()[0].layout, ways[2].layout);
  emit cards()[2]->looked_at(false);
  EXPECT_EQ(window.canvas()->ghosts()[0].layout, ways[1].layout);
  cards()[0]->setFocus();
  EXPECT_TRUE(window.canvas()->ghosts().empty());  // it is what is drawn
}

TEST_F(WaysPanelTest, TwoPickedAreShownTogetherWithTheirDifferences) {
  find();
  ASSERT_GE(cards().size(), 4u);
  const auto& ways = panel->service().newest()->ways;
  const auto compare = [&](std::size_t card) {
    for (QPushButton* button : cards()[card]->findChildren<QPushButton*>())
      if (button->isCheckable()) button->click();
  };
  const auto says = [&](const QString& text) {
    for (QLabel* label : panel->findChildren<QLabel*>())
      if (label->text() == text) return true;
    return false;
  };
  compare(1);
  EXPECT_FALSE(says("B less A"));
  compare(2);
  ASSERT_EQ(window.canvas()->ghosts().size(), 2u);
  EXPECT_EQ(window.canvas()->ghosts()[0].layout, ways[1].layout);
  EXPECT_EQ(window.canvas()->ghosts()[1].layout, ways[2].layout);
  EXPECT_TRUE(says("B less A"));
  compare(3);  // in the place of the first
  ASSERT_EQ(window.canvas()->ghosts().size(), 2u);
  EXPECT_EQ(window.canvas()->ghosts()[0].layout, ways[2].layout);
  EXPECT_EQ(window.canvas()->ghosts()[1].layout, ways[3].layout);
  compare(3);
  compare(2);
  EXPECT_LE(window.canvas()->ghosts().size(), 1u);
  EXPECT_FALSE(says("B less A"));
}

TEST_F(WaysPanelTest, AnotherTabTakesItFromTheDrawing) {
  find();
  cards()[1]->setFocus();
  ASSERT_EQ(window.canvas()->ghosts().size(), 1u);
  window.side()->show_tab(SideColumn::Tab::loop, false);
  EXPECT_TRUE(window.canvas()->ghosts().empty());
}

TEST_F(WaysPanelTest, TakenByKeyItIsOneUndoAndTheOthersCanStillBeTaken) {
  find();
  const Wishes before = window.document().committed().wishes;
  const auto answer = panel->service().newest();
  cards()[1]->setFocus();
  QTest::keyClick(cards()[1], Qt::Key_Return);
  EXPECT_EQ(window.document().committed().wishes, answer->ways[1].wishes);
  EXPECT_FALSE(old());
  EXPECT_FALSE(taker(cards()[1])->isEnabled());
  EXPECT_TRUE(taker(cards()[0])->isEnabled());
  ASSERT_TRUE(wait_until([&] { return !window.document().stale(); }));
  EXPECT_EQ(window.document().outcome()->layout, answer->ways[1].layout);
  window.document().undo();
  EXPECT_EQ(window.document().committed().wishes, before);
}

TEST_F(WaysPanelTest, AChangedLotMakesThemOld) {
  find();
  Plan plan = window.document().committed();
  plan.site.lot[0].setback += 0.5;
  window.document().commit(plan, "Setback");
  EXPECT_TRUE(old());
  EXPECT_FALSE(taker(cards()[1])->isEnabled());
  window.document().undo();
  EXPECT_FALSE(old());
}

TEST_F(WaysPanelTest, StopEndsItWithoutAnAnswer) {
  window.actions().action("edit.find_ways")->trigger();
  EXPECT_TRUE(panel->service().busy());
  panel->service().stop();
  ASSERT_TRUE(wait_until([&] { return !panel->service().busy(); }));
  EXPECT_EQ(panel->service().newest(), nullptr);
}

TEST_F(WaysPanelTest, TheKeyboardStaysWithIt) {
  window.actions().action("panel.ways")->trigger();
  QWidget* run = QApplication::focusWidget();
  ASSERT_NE(run, nullptr);
  QTest::keyClick(run, Qt::Key_Space);
  ASSERT_TRUE(panel->isAncestorOf(QApplication::focusWidget()));
  ASSERT_TRUE(wait_until([&] { return !panel->service().busy(); }));
  EXPECT_EQ(QApplication::focusWidget(), cards()[1]);
  EXPECT_EQ(window.canvas()->ghosts().size(), 1u);
}

TEST_F(WaysPanelTest, OfAnEmptyPlanThereIsNothing) {
  window.document().start_new();
  find();
  EXPECT_TRUE(cards().empty());
}
