// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/size_panel.h"

#include <gtest/gtest.h>

#include <QGraphicsEffect>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>

#include "app/support/wait.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

struct SizePanelTest : testing::Test {
  Document document;
  SizePanel panel{document};

  void SetUp() override {
    Plan plan = sample::half_acre();
    plan.thermal.years = 1;
    document.commit(plan, "Drawn");
    panel.show();
  }
  QPushButton* button(const QString& text) {
    for (QPushButton* b : panel.findChildren<QPushButton*>())
      if (b->text() == text) return b;
    return nullptr;
  }
  bool says(const QString& text) {
    QCoreApplication::processEvents();  // what was just put into a layout is shown by then
    for (QLabel* label : panel.findChildren<QLabel*>())
      if (label->isVisible() && label->text().contains(text)) return true;
    return false;
  }
  std::vector<QPushButton*> takers() {
    std::vector<QPushButton*> out;
    for (QPushButton* b : panel.findChildren<QPushButton*>())
      if (b->text() == "Take") out.push_back(b);
    return out;
  }
  void size_it() {
    button("Size the loop")->click();
    ASSERT_TRUE(wait_until([&] { return !panel.service().busy(); }));
  }
};

}  // namespace

TEST_F(SizePanelTest, RunsBesideTheWindowAndTellsTheNeed) {
  button("Size the loop")->click();
  EXPECT_TRUE(panel.service().busy());
  EXPECT_TRUE(button("Stop")->isVisible());
  EXPECT_FALSE(button("Size the loop")->isEnabled());
  ASSERT_TRUE(wait_until([&] { return !panel.service().busy(); }));
  EXPECT_FALSE(button("Stop")->isVisible());
  EXPECT_TRUE(says(" needed, 4 drawn."));
  EXPECT_TRUE(says("Classic equation, heating"));
  EXPECT_TRUE(says("of 300 draws"));
  EXPECT_FALSE(says("Of an earlier plan"));
}

TEST_F(SizePanelTest, StopEndsItWithoutAnAnswer) {
  button("Size the loop")->click();
  button("Stop")->click();
  ASSERT_TRUE(wait_until([&] { return !panel.service().busy(); }));
  EXPECT_EQ(panel.service().newest(), nullptr);
  EXPECT_TRUE(button("Size the loop")->isEnabled());
}

TEST_F(SizePanelTest, TakingOneIsOneUndoAndWhatIsShownIsThenOfAnEarlierPlan) {
  size_it();
  const Plan before = document.committed();
  ASSERT_GT(takers().size(), 2u);
  takers().back()->click();
  EXPECT_NE(document.committed().wishes, before.wishes);
  EXPECT_EQ(document.committed().site, before.site);
  EXPECT_TRUE(says("Of an earlier plan"));
  EXPECT_FALSE(takers().front()->isEnabled());
  document.undo();
  EXPECT_EQ(document.committed(), before);
  EXPECT_FALSE(says("Of an earlier plan"));
  EXPECT_TRUE(takers().front()->isEnabled());
}

TEST_F(SizePanelTest, ARefusalIsSaidInPlaceOfSizes) {
  Plan plan = document.committed();
  plan.thermal.coldest_allowed = 18;
  document.commit(plan, "Limit");
  size_it();
  EXPECT_TRUE(says("no length of pipe makes the water warmer than the ground"));
  EXPECT_TRUE(takers().empty());
}
