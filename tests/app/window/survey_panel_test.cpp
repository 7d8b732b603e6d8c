// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/survey_panel.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QMenu>
#include <QPushButton>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>

#include "app/support/fields.h"
#include "canvas/canvas.h"
#include "files/atomic_file.h"
#include "plan/edits.h"
#include "plane/region.h"
#include "window/deed_editor.h"
#include "window/facts.h"
#include "window/main_window.h"
#include "window/notebook_table.h"
#include "window/overlay.h"
#include "window/side_column.h"

using namespace underlawn;

namespace {

struct SurveyPanelTest : testing::Test {
  QTemporaryDir folder;
  MainWindow window{folder.filePath("kept")};
  SurveyPanel* panel = window.side()->survey_panel();
  Document& document = window.document();

  void SetUp() override {
    Plan plan;
    plan.units = UnitSystem::metric;
    document.commit(plan, "Drawn");
    window.resize(1280, 900);
    window.show();
    QApplication::setActiveWindow(&window);
    window.actions().action("panel.survey")->trigger();
    QCoreApplication::processEvents();
  }
  void TearDown() override { document.start_new(); }
  void type_deed(const QString& text) { QTest::keyClicks(panel->editor(), text); }
  void line(const QString& text) {
    type_deed(text);
    QTest::keyClick(panel->editor(), Qt::Key_Return);
  }
  QPushButton* button(const QString& text) {
    for (QPushButton* b : panel->findChildren<QPushButton*>())
      if (b->text() == text) return b;
    return nullptr;
  }
  QAction* make(const QString& text) {
    for (QToolButton* b : panel->findChildren<QToolButton*>()) {
      if (b->menu() == nullptr) continue;
      emit b->menu()->aboutToShow();
      for (QAction* a : b->menu()->actions())
        if (a->text() == text) return a;
    }
    return nullptr;
  }
  void oblong() {
    line("N 0 E 30 m");
    line("N 90 E 40 m");
    line("S 0 E 30 m");
    line("N 90 W 39.9 m");
  }
};

}  // namespace

TEST_F(SurveyPanelTest, TheTraverseIsDrawnWhileItIsTypedAndEscLeavesNoTrace) {
  ASSERT_TRUE(panel->editor()->hasFocus());
  const Plan before = document.committed();
  line("N 0 E 30 m");
  type_deed("N 90 E 40 m");
  EXPECT_EQ(window.canvas()->survey().courses.size(), 2u);
  EXPECT_EQ(panel->courses()->rowCount(), 2);
  EXPECT_EQ(document.committed(), before);
  QTest::keyClick(panel->editor(), Qt::Key_Escape);
  EXPECT_TRUE(window.canvas()->survey().courses.empty());
  EXPECT_TRUE(panel->editor()->toPlainText().isEmpty());
  EXPECT_EQ(document.committed(), before);
  EXPECT_EQ(document.undo_name(), "Drawn");
}

TEST_F(SurveyPanelTest, ClosureIsToldAndTheLotLineMadeAsOneEntry) {
  oblong();
  EXPECT_EQ(panel->facts()->value_of("Misclosure"), "0.100 m");
  EXPECT_TRUE(window.canvas()->survey().misclosure.has_value());
  QTest::mouseClick(button("Make the lot line"), Qt::LeftButton);
  ASSERT_EQ(document.committed().site.lot.size(), 4u);
  EXPECT_FALSE(document.committed().survey.deed.text.empty());
  document.undo();
  EXPECT_EQ(document.undo_name(), "Drawn");
  EXPECT_TRUE(document.committed().site.lot.empty());
  EXPECT_TRUE(document.committed().survey.deed.text.empty());
}

TEST_F(SurveyPanelTest, TheKeyMakesTheLotLineFromTheBoxAndUndoTakesBothBack) {
  oblong();
  QTest::keyClick(panel->editor(), Qt::Key_L, Qt::AltModifier);
  ASSERT_EQ(document.committed().site.lot.size(), 4u);
  EXPECT_FALSE(document.committed().survey.deed.text.empty());
  QTest::keyClick(panel->editor(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(document.undo_name(), "Drawn");
  EXPECT_TRUE(document.committed().site.lot.empty());
}

TEST_F(SurveyPanelTest, FoundByItsNameTheCommandIsOneEntryToo) {
  oblong();
  window.actions().action("help.find")->trigger();
  auto* finder = window.findChild<Finder*>();
  ASSERT_TRUE(finder->isVisible());
  QTest::keyClicks(finder->field(), "lot line by the deed");
  QTest::keyClick(finder->field(), Qt::Key_Return);
  ASSERT_EQ(document.committed().site.lot.size(), 4u);
  document.undo();
  EXPECT_EQ(document.undo_name(), "Drawn");
  EXPECT_TRUE(document.committed().survey.deed.text.empty());
}

TEST_F(SurveyPanelTest, ARefusalNamesItsLineAndKeepsTheButtonShut) {
  line("N 0 E 30 m");
  type_deed("S 95 E 3 m");
  EXPECT_NE(panel->wrong().indexOf("line 2"), -1) << panel->wrong().toStdString();
  EXPECT_FALSE(button("Make the lot line")->isEnabled());
  EXPECT_EQ(window.canvas()->survey().courses.size(), 1u);
}

TEST_F(SurveyPanelTest, NothingIsDrawnWhenAnotherPanelIsInSight) {
  oblong();
  window.side()->show_tab(SideColumn::Tab::loop, false);
  EXPECT_TRUE(window.canvas()->survey().empty());
  EXPECT_FALSE(document.committed().survey.deed.text.empty());  // leaving the box kept it
  window.side()->show_tab(SideColumn::Tab::survey, false);
  EXPECT_EQ(window.canvas()->survey().courses.size(), 4u);
}

TEST_F(SurveyPanelTest, APointByTwoTapesBecomesATree) {
  document.commit(edit::with_lot(document.committed(), {{0, 0}, {50, 0}, {50, 40}, {0, 40}}, 3), "Lot");
  QTest::mouseClick(button("Add a point"), Qt::LeftButton);
  ASSERT_EQ(document.committed().survey.notebook.size(), 1u);
  EXPECT_EQ(document.committed().survey.notebook[0].from, "lot 1");
  type(called<QLineEdit>(*panel, "Distance from it"), "30 m");
  type(called<QLineEdit>(*panel, "Distance from that"), "40 m");
  auto* side = called<QComboBox>(*panel, "Seen along that way");
  ASSERT_NE(side, nullptr);
  side->setCurrentIndex(1);
  emit side->activated(1);
  ASSERT_EQ(window.canvas()->survey().marks.size(), 1u);
  EXPECT_NEAR(window.canvas()->survey().marks[0].at.x, 18, 1e-6);
  EXPECT_NEAR(window.canvas()->survey().marks[0].at.y, 24, 1e-6);
  QAction* tree = make("A tree");
  ASSERT_NE(tree, nullptr);
  tree->trigger();
  ASSERT_EQ(document.committed().site.features.size(), 1u);
  EXPECT_EQ(document.committed().site.features[0].name, "P1");
  document.undo();
  EXPECT_TRUE(document.committed().site.features.empty());
}

TEST_F(SurveyPanelTest, PointsOfAFileArePlacedAndToldOf) {
  ASSERT_TRUE(write_file(folder.filePath("points.csv").toStdString(),
                         "name,lat,lon\nOak,45.0000,10.0000\nElm,45.0002,10.0004\nbad,99,0\n"));
  QString told;
  QObject::connect(panel, &SurveyPanel::told, panel, [&](const QString& words) { told = words; });
  panel->import_points(folder.filePath("points.csv"));
  EXPECT_EQ(document.committed().survey.notebook.size(), 2u);
  EXPECT_TRUE(document.committed().map_place.has_value());
  EXPECT_EQ(panel->notebook()->picked().size(), 2u);
  EXPECT_NE(told.indexOf("line 4"), -1) << told.toStdString();
  panel->import_points(folder.filePath("none.csv"));
  EXPECT_NE(told.indexOf("was not taken"), -1) << told.toStdString();
  EXPECT_EQ(document.committed().survey.notebook.size(), 2u);
}
