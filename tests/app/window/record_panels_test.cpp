// SPDX-License-Identifier: GPL-3.0-or-later
// Record and as-built pages, as somebody at the keyboard fills them in.
#include <gtest/gtest.h>

#include <QComboBox>
#include <QFile>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTemporaryDir>
#include <QTest>

#include "app/support/fields.h"
#include "app/support/wait.h"
#include "canvas/canvas.h"
#include "plan/record/taping.h"
#include "report/headline.h"
#include "sheets/photo_picture.h"
#include "support/sample_plans.h"
#include "window/as_built_panel.h"
#include "window/as_built_words.h"
#include "window/main_window.h"
#include "window/photo_list.h"
#include "window/record_lines.h"
#include "window/record_panel.h"
#include "window/side_column.h"

using namespace underlawn;

namespace {

struct RecordPanelsTest : testing::Test {
  QTemporaryDir folder;
  MainWindow window{folder.filePath("kept")};
  Document& document = window.document();

  void SetUp() override {
    Plan plan = sample::half_acre();
    plan.thermal.years = 1;
    document.commit(plan, "Drawn");
    window.resize(1280, 800);
    window.show();
    QApplication::setActiveWindow(&window);
    ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  }
  void TearDown() override { document.start_new(); }
};

QLineEdit* edit_of(QWidget& panel, const QString& name) {
  return called<QLineEdit>(panel, name);
}

}  // namespace

TEST_F(RecordPanelsTest, ARecordIsTypedAndTellsWhatItMeans) {
  window.actions().action("panel.record")->trigger();
  RecordPanel* panel = window.side()->record_panel();
  type(edit_of(*panel, "Pumping began"), "2026-5-14 9:30");
  EXPECT_EQ(document.plan().record.test.start, "2026-05-14 09:30");
  type(edit_of(*panel, "Last reading"), "2026-05-14 10:00");
  EXPECT_TRUE(panel->test_lines()->text().contains("Duration of the test"));
  type(edit_of(*panel, "First joint covered"), "soon");
  EXPECT_EQ(document.plan().record.test.joints_covered, "");
  EXPECT_EQ(edit_of(*panel, "First joint covered")->text(), "soon");  // nothing typed is lost
  type(edit_of(*panel, "First joint covered"), "2026-05-13");
  EXPECT_TRUE(panel->test_lines()->text().contains("no test is recorded as passed"));

  panel->add_flushing();
  EXPECT_EQ(panel->window()->focusWidget(), edit_of(*panel, "Circuits open"));
  type(edit_of(*panel, "Flow read"), "30 gpm");
  type(edit_of(*panel, "Pressure drop read"), "500 psi");
  ASSERT_EQ(document.plan().record.flush.size(), 1u);
  EXPECT_NEAR(*document.plan().record.flush[0].flow, 30 * 6.30902e-5, 1e-7);
  EXPECT_TRUE(panel->flush_lines()->text().contains("psi read"));
  type(edit_of(*panel, "Flow read"), "");
  EXPECT_FALSE(document.plan().record.flush[0].flow);
  panel->add_flushing();
  EXPECT_EQ(panel->flushing(), 1u);
  EXPECT_EQ(document.plan().record.flush[1].direction, FlushDirection::reverse);
  panel->remove_flushing();
  EXPECT_EQ(document.plan().record.flush.size(), 1u);

  type(edit_of(*panel, "Freezing point read"), "31 F");
  EXPECT_TRUE(panel->fill_lines()->text().contains("Take out"));
  document.undo();
  EXPECT_FALSE(document.plan().record.fill.freezing_point);
}

TEST_F(RecordPanelsTest, ATrenchStoppedShortIsSolvedAgainAndDrawn) {
  AsBuiltPanel* panel = window.side()->as_built_panel();
  window.actions().action("panel.as_built")->trigger();
  EXPECT_EQ(panel->shown(), nullptr);
  const int number = document.outcome()->layout.trenches[1].number;
  panel->choose_trench(number);
  type(edit_of(*panel, "Length dug"), "40'");
  ASSERT_EQ(document.plan().as_built.trenches.size(), 1u);
  ASSERT_TRUE(
      wait_until([&] { return panel->answer() != nullptr && !panel->at_work() && !document.stale(); }));
  ASSERT_NE(panel->shown(), nullptr);
  EXPECT_TRUE(panel->answer()->loop.changed);
  ASSERT_TRUE(window.canvas()->ghost());
  ASSERT_EQ(window.canvas()->ghost()->layout.trenches.size(), 1u);
  EXPECT_EQ(window.canvas()->ghost()->layout.trenches[0], document.outcome()->layout.trenches[1]);
  window.actions().action("panel.report")->trigger();
  EXPECT_EQ(panel->shown(), nullptr);
  EXPECT_FALSE(window.canvas()->ghost());
  document.undo();
  ASSERT_TRUE(document.plan().as_built.trenches.empty());
}

TEST_F(RecordPanelsTest, WhatDoesNotHoldAsBuiltIsSaidAboveThePanelsWithoutOpeningOne) {
  Headline* headline = window.side()->headline();
  window.side()->show_tab(SideColumn::Tab::loop, false);
  Plan plan = document.plan();
  EXPECT_FALSE(headline->words().contains("As built"));
  for (const Trench& t : document.outcome()->layout.trenches)
    if (t.number > 1) said_of(plan, t.number).fate = TrenchFate::left_out;
  document.commit(plan, "As built");
  ASSERT_TRUE(wait_until([&] { return headline->words().contains("As built it does not hold"); }));
  emit headline->as_built_asked();
  EXPECT_EQ(window.side()->tab(), SideColumn::Tab::as_built);
  document.undo();
  EXPECT_TRUE(wait_until([&] { return !headline->words().contains("As built"); }));
}

TEST_F(RecordPanelsTest, TapesAreTypedAndWhatCannotBeIsRefusedUnderTheField) {
  AsBuiltPanel* panel = window.side()->as_built_panel();
  window.actions().action("panel.as_built")->trigger();
  const Outcome& outcome = *document.outcome();
  const Trench& trench = outcome.layout.trenches.front();
  panel->choose_trench(trench.number);
  QString tapes;
  for (const Tie& tie : outcome.stake_out.ties)
    if (std::hypot(tie.at.x - trench.end.x, tie.at.y - trench.end.y) < 0.01)
      tapes = QString("%1 %2 m, %3 %4 m, %5")
                  .arg(QString::fromStdString(tie.first))
                  .arg(tie.first_distance, 0, 'f', 3)
                  .arg(QString::fromStdString(tie.second))
                  .arg(tie.second_distance, 0, 'f', 3)
                  .arg(tie.left_of_base ? "left" : "right");
  ASSERT_FALSE(tapes.isEmpty());
  QLineEdit* end = edit_of(*panel, "End, taped");
  type(end, "A 3', B 4', left");
  EXPECT_TRUE(document.plan().as_built.trenches.empty());
  EXPECT_EQ(end->text(), "A 3', B 4', left");
  type(end, tapes);
  ASSERT_EQ(document.plan().as_built.trenches.size(), 1u);
  const auto at = place_of(outcome.stake_out.corners, *document.plan().as_built.trenches[0].end, "end");
  ASSERT_TRUE(at);
  EXPECT_LT(std::hypot(at->at.x - trench.end.x, at->at.y - trench.end.y), 0.01);
}

// As the sheet prints a tie, without left or right: the point is where it was planned, and the field says the
// side it took.
TEST_F(RecordPanelsTest, TapesWithoutASideAreTakenOnThePlannedOne) {
  AsBuiltPanel* panel = window.side()->as_built_panel();
  window.actions().action("panel.as_built")->trigger();
  const Outcome& outcome = *document.outcome();
  int right = 0;
  for (const Trench& trench : outcome.layout.trenches)
    for (const Tie& tie : outcome.stake_out.ties) {
      if (std::hypot(tie.at.x - trench.head.x, tie.at.y - trench.head.y) > 0.01) continue;
      panel->choose_trench(trench.number);
      QLineEdit* head = edit_of(*panel, "Head, taped");
      type(head, QString("%1 %2 m, %3 %4 m")
                     .arg(QString::fromStdString(tie.first))
                     .arg(tie.first_distance, 0, 'f', 3)
                     .arg(QString::fromStdString(tie.second))
                     .arg(tie.second_distance, 0, 'f', 3));
      const BuiltTrench* said = find_said(document.plan(), trench.number);
      ASSERT_TRUE(said != nullptr && said->head) << trench.number;
      EXPECT_EQ(said->head->left, tie.left_of_base) << tie.point;
      EXPECT_TRUE(head->text().endsWith(tie.left_of_base ? "left" : "right"));
      right += !tie.left_of_base;
    }
  EXPECT_GT(right, 0);  // else the side that is taken without a plan would do
}

// A name on the record is nothing that digging lost.
TEST_F(RecordPanelsTest, WhatThePlanDidNotHoldEitherIsNoAlarm) {
  Headline* headline = window.side()->headline();
  Plan plan = document.plan();
  plan.flow.most_imbalance = 1e-9;  // no loop is so even
  plan.as_built.measured_by = "R. Ortiz";
  document.commit(plan, "As built");
  AsBuiltPanel* panel = window.side()->as_built_panel();
  ASSERT_TRUE(
      wait_until([&] { return panel->answer() != nullptr && !panel->at_work() && !document.stale(); }));
  EXPECT_FALSE(all_hold(panel->answer()->holds));
  EXPECT_FALSE(headline->words().contains("As built")) << headline->words().toStdString();
}

// What it takes seconds to work out is not worked out again for a caption.
TEST_F(RecordPanelsTest, PhotosAndNotesLeaveTheAnswerAsItIs) {
  AsBuiltPanel* panel = window.side()->as_built_panel();
  window.actions().action("panel.as_built")->trigger();
  panel->choose_trench(document.outcome()->layout.trenches[1].number);
  const auto answered = [&] {
    return wait_until([&] { return panel->answer() != nullptr && !panel->at_work() && !document.stale(); });
  };
  type(edit_of(*panel, "Length dug"), "40'");
  ASSERT_TRUE(answered());
  const AsBuiltAnswer* before = panel->answer();
  panel->findChild<PhotoList*>()->add_files({folder.filePath("gone.png")}, 2);
  type(edit_of(*panel, "Measured by"), "R. Ortiz");
  ASSERT_TRUE(answered());
  EXPECT_EQ(panel->answer(), before);
  type(edit_of(*panel, "Length dug"), "30'");
  ASSERT_TRUE(answered());
  EXPECT_NEAR(length_of(panel->answer()->loop.layout.trenches[1]), 30 * 0.3048, 0.01);
}

// What appears above a field leaves it under the hand.
TEST_F(RecordPanelsTest, AFieldStaysWhereItIsWhileThePageGrowsAboveIt) {
  window.actions().action("panel.as_built")->trigger();
  AsBuiltPanel* panel = window.side()->as_built_panel();
  panel->choose_trench(document.outcome()->layout.trenches[1].number);
  QLineEdit* length = edit_of(*panel, "Length dug");
  auto* area = qobject_cast<QScrollArea*>(panel->parentWidget()->parentWidget());
  ASSERT_NE(area, nullptr);
  length->setFocus();
  area->ensureWidgetVisible(length);
  QApplication::processEvents();
  const int before = length->mapToGlobal(QPoint()).y(), in_page = length->mapTo(panel, QPoint()).y();
  type(length, "40'");
  ASSERT_TRUE(
      wait_until([&] { return panel->answer() != nullptr && !panel->at_work() && !document.stale(); }));
  QApplication::processEvents();
  QApplication::processEvents();
  ASSERT_GT(length->mapTo(panel, QPoint()).y(), in_page + 100);  // else nothing appeared above
  EXPECT_NEAR(length->mapToGlobal(QPoint()).y(), before, 2);
}

TEST_F(RecordPanelsTest, APageThatIsOpenedShowsItsTop) {
  Plan plan = document.committed();
  plan.record.test.start = "2026-05-14 07:30";
  document.commit(std::move(plan), "Recorded");
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  window.actions().action("panel.record")->trigger();
  QTest::qWait(300);
  auto* area = qobject_cast<QScrollArea*>(window.side()->record_panel()->parentWidget()->parentWidget());
  ASSERT_NE(area, nullptr);
  EXPECT_EQ(area->verticalScrollBar()->value(), 0);
}

TEST_F(RecordPanelsTest, ATrenchClickedWhileTheAsBuiltIsLookedAtIsShownThere) {
  window.actions().action("panel.as_built")->trigger();
  AsBuiltPanel* panel = window.side()->as_built_panel();
  const int number = document.outcome()->layout.trenches[2].number;
  window.selection().select({Selected::Kind::trench, number});
  EXPECT_EQ(window.side()->tab(), SideColumn::Tab::as_built);
  EXPECT_EQ(panel->trench(), number);
  window.side()->show_tab(SideColumn::Tab::loop, false);
  window.selection().select({Selected::Kind::trench, document.outcome()->layout.trenches[1].number});
  EXPECT_EQ(window.side()->tab(), SideColumn::Tab::selected);
}

TEST_F(RecordPanelsTest, ABrokenSpacingIsSaidInWordsOnThePage) {
  window.actions().action("panel.as_built")->trigger();
  AsBuiltPanel* panel = window.side()->as_built_panel();
  const Trench &a = document.outcome()->layout.trenches[0], &b = document.outcome()->layout.trenches[1];
  Plan plan = document.committed();
  BuiltTrench& moved = said_of(plan, a.number);
  moved.head = BuiltPoint{{}, true, a.head + 0.3 * (b.head - a.head)};
  moved.end = BuiltPoint{{}, true, a.end + 0.3 * (b.head - a.head)};
  document.commit(std::move(plan), "As built");
  ASSERT_TRUE(
      wait_until([&] { return panel->answer() != nullptr && !panel->at_work() && !document.stale(); }));
  EXPECT_TRUE(panel->findings()->text().contains("too close")) << panel->findings()->text().toStdString();
}

TEST_F(RecordPanelsTest, AnotherPlanIsOpenedOnItsFirstTrench) {
  AsBuiltPanel* panel = window.side()->as_built_panel();
  window.actions().action("panel.as_built")->trigger();
  const int first = document.outcome()->layout.trenches[0].number;
  panel->choose_trench(document.outcome()->layout.trenches[2].number);
  Plan recorded = document.committed();
  said_of(recorded, first).dug_on = "2026-05-14";
  document.commit(std::move(recorded), "Recorded");
  const QString path = folder.filePath("other.underlawn");
  ASSERT_TRUE(document.save_as(path));
  ASSERT_TRUE(document.open(path));
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  EXPECT_EQ(panel->trench(), first);
  EXPECT_EQ(edit_of(*panel, "Day of digging") != nullptr ? edit_of(*panel, "Day of digging")->text()
                                                         : edit_of(*panel, "Dug on")->text(),
            "2026-05-14");
}

TEST_F(RecordPanelsTest, WhatAPhotoIsOfStandsOnTheButton) {
  window.actions().action("panel.as_built")->trigger();
  AsBuiltPanel* panel = window.side()->as_built_panel();
  panel->choose_trench(document.outcome()->layout.trenches[1].number);
  QStringList words;
  for (QPushButton* button : panel->findChild<PhotoList*>()->findChildren<QPushButton*>())
    if (!button->isHidden()) words << button->text();
  EXPECT_TRUE(words.contains(QString("Add photos of trench %1…").arg(panel->trench())));
  EXPECT_TRUE(words.contains("Add photos of no one trench…"));
}

TEST_F(RecordPanelsTest, AMendIsTakenByItsButtonAsOneEntry) {
  window.actions().action("panel.as_built")->trigger();
  AsBuiltPanel* panel = window.side()->as_built_panel();
  panel->choose_trench(document.outcome()->layout.trenches[1].number);
  type(edit_of(*panel, "Length dug"), "40'");
  ASSERT_TRUE(wait_until([&] { return panel->mends() != nullptr && !panel->at_work(); }));
  QPushButton* take = nullptr;
  for (QPushButton* button : panel->findChildren<QPushButton*>())
    if (take == nullptr && button->text() == "Take this mend") take = button;
  ASSERT_NE(take, nullptr);
  const Plan before = document.committed();
  take->click();
  EXPECT_NE(document.committed().as_built, before.as_built);
  document.undo();
  EXPECT_EQ(document.committed(), before);
}

TEST_F(RecordPanelsTest, TheRecordLeadsToTheReadingsAndTheyLeadBack) {
  window.actions().action("panel.record")->trigger();
  emit window.side()->record_panel()->readings_asked();
  EXPECT_EQ(window.side()->tab(), SideColumn::Tab::flow);
  ASSERT_TRUE(wait_until([&] {
    const auto* button = qobject_cast<QPushButton*>(window.focusWidget());
    return button != nullptr && button->text() == "Add a reading";
  }));
  QTest::qWait(500);  // while curves are worked out above it
  const QWidget* adding = window.focusWidget();
  EXPECT_TRUE(adding->visibleRegion().boundingRect().height() > adding->height() / 2);
  for (QPushButton* button : window.side()->findChildren<QPushButton*>())
    if (button->text() == "Dates and witness: Record page") button->click();
  EXPECT_EQ(window.side()->tab(), SideColumn::Tab::record);
}

// Each form is what its readers take it for.
TEST_F(RecordPanelsTest, TheAsBuiltIsSavedAsDrawingMapAndTable) {
  AsBuiltPanel* panel = window.side()->as_built_panel();
  window.actions().action("panel.as_built")->trigger();
  EXPECT_FALSE(panel->export_to(folder.filePath("early.csv")).isEmpty());
  Plan plan = document.committed();
  BuiltTrench t;
  t.number = document.outcome()->layout.trenches.front().number;
  t.length = 12;
  plan.as_built.trenches = {t};
  plan.map_place = MapPlace{42.4, -71.2, {0, 0}};
  document.commit(std::move(plan), "recorded");
  ASSERT_TRUE(
      wait_until([&] { return panel->answer() != nullptr && !document.stale() && !panel->at_work(); }));
  const auto head = [&](const QString& name) {
    QFile file(folder.filePath(name));
    return file.open(QIODevice::ReadOnly) ? file.read(4000) : QByteArray();
  };
  for (const char* name : {"b.csv", "b.dxf", "b.geojson", "b.gpkg"})
    EXPECT_EQ(panel->export_to(folder.filePath(name)), QString()) << name;
  EXPECT_TRUE(head("b.csv").startsWith("point,x ft,y ft"));
  EXPECT_TRUE(head("b.dxf").contains("AC1015"));
  EXPECT_TRUE(head("b.geojson").contains("FeatureCollection"));
  EXPECT_TRUE(head("b.gpkg").startsWith("SQLite format 3"));
  EXPECT_TRUE(panel->export_to(folder.filePath("b.odt")).contains("dxf"));
  EXPECT_FALSE(QFile::exists(folder.filePath("b.odt")));
}

TEST_F(RecordPanelsTest, PhotosAreKeptBesideThePlanAndMissingOnesAreSaid) {
  const QString path = folder.filePath("job.underlawn");
  ASSERT_TRUE(document.save_as(path));
  QImage image(4000, 3000, QImage::Format_RGB32);
  image.fill(Qt::darkGreen);
  QDir(folder.path()).mkdir("photos");
  ASSERT_TRUE(image.save(folder.filePath("photos/rock.png")));
  window.actions().action("panel.as_built")->trigger();
  auto* list = window.side()->as_built_panel()->findChild<PhotoList*>();
  list->add_files({folder.filePath("photos/rock.png"), folder.filePath("photos/gone.png")}, 2);
  ASSERT_EQ(document.plan().as_built.photos.size(), 2u);
  EXPECT_EQ(document.plan().as_built.photos[0].file, "photos/rock.png");
  EXPECT_FALSE(list->list()->item(0)->icon().isNull());
  EXPECT_TRUE(list->list()->item(1)->text().contains("not found"));
  EXPECT_TRUE(small_picture(folder.filePath("photos/rock.png"), 88).width() <= 88);
  QFile broken(folder.filePath("photos/broken.jpg"));
  ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
  broken.write("no picture at all");
  broken.close();
  EXPECT_TRUE(small_picture(broken.fileName(), 88).isNull());
  list->add_files({broken.fileName()}, 0);
  EXPECT_TRUE(list->list()->item(2)->text().contains("no picture"))
      << list->list()->item(2)->text().toStdString();
}

TEST_F(RecordPanelsTest, APictureTooLargeToShowIsSaidToBeSo) {
  QImage large(20000, 20000, QImage::Format_Mono);
  large.fill(1);
  ASSERT_TRUE(large.save(folder.filePath("large.png")));
  EXPECT_TRUE(small_picture(folder.filePath("large.png"), 88).isNull());
  EXPECT_TRUE(no_picture(folder.filePath("large.png")).words.contains("20000 by 20000"));
  EXPECT_TRUE(no_picture(folder.filePath("gone.png")).words.contains("not found"));
}
