// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/main_window.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QDate>
#include <QDir>
#include <QLineEdit>
#include <QListWidget>
#include <QMenuBar>
#include <QScrollArea>
#include <QSettings>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTest>
#include <QTextBrowser>
#include <QToolButton>
#include <set>

#include "app/support/fields.h"
#include "app/support/wait.h"
#include "canvas/canvas.h"
#include "files/plan_file.h"
#include "plan/fingerprint.h"
#include "report/report_panel.h"
#include "support/sample_plans.h"
#include "window/notice_bar.h"
#include "window/overlay.h"
#include "window/settings.h"
#include "window/sheet_strip.h"
#include "window/side_column.h"
#include "window/tool_strip.h"

using namespace underlawn;

namespace {

struct MainWindowTest : testing::Test {
  QTemporaryDir folder;
  MainWindow window{folder.filePath("kept")};

  void SetUp() override {
    window.resize(1280, 800);
    window.show();
    QApplication::setActiveWindow(&window);
  }
  void TearDown() override { window.document().start_new(); }
  void run(std::string_view id) { window.actions().action(id)->trigger(); }
  void draw() {
    window.document().commit(sample::half_acre(), "Drawn");
    ASSERT_TRUE(wait_until([&] { return !window.document().stale(); }));
  }
};

}  // namespace

TEST_F(MainWindowTest, EveryCommandDoesSomething) {
  for (const Command& c : commands()) EXPECT_TRUE(window.actions().has_run(c.id)) << c.id;
}

TEST_F(MainWindowTest, EveryCommandIsInAMenu) {
  std::set<const QAction*> in_menus;
  for (const QAction* menu : window.menuBar()->actions())
    for (const QAction* action : menu->menu()->actions()) in_menus.insert(action);
  for (const Command& c : commands()) EXPECT_TRUE(in_menus.contains(window.actions().action(c.id))) << c.id;
}

TEST_F(MainWindowTest, PanelsAreCalledAndOrderedAsTheirTabsAndNumberedInThatOrder) {
  const auto* tabs = window.side()->findChild<QTabWidget*>();
  int at = 0;
  for (const Command& c : commands()) {
    if (c.group != CommandGroup::panel || c.id == "panel.drawing" || c.id == "panel.notice") continue;
    EXPECT_EQ(tabs->tabText(at), title_of(c));
    EXPECT_TRUE(tabs->tabToolTip(at).contains("(" + key_words(c) + ")")) << c.id;
    if (at < 10) {
      EXPECT_EQ(c.shortcut, "Alt+" + std::to_string((at + 1) % 10)) << c.id;
    }
    run(c.id);
    EXPECT_EQ(tabs->currentIndex(), at) << c.id;
    ++at;
  }
  EXPECT_EQ(at, tabs->count());
}

TEST_F(MainWindowTest, EveryToolOfTheTableIsTakenInHand) {
  for (const Command& c : commands()) {
    if (c.id.substr(0, kToolPrefix.size()) != kToolPrefix) continue;
    run(c.id);
    EXPECT_EQ(tool_name(window.canvas()->tool()), c.id.substr(kToolPrefix.size()));
    EXPECT_TRUE(window.actions().action(c.id)->isChecked());
  }
}

TEST_F(MainWindowTest, KeysOfPanelsOpenThemWhateverToolIsInHand) {
  for (const char* tool : {"tool.lot", "tool.why", "tool.height", "tool.select"}) {
    run(tool);
    const QString before = window.canvas()->status();
    QTest::keyClick(window.canvas(), Qt::Key_2, Qt::AltModifier);
    EXPECT_EQ(window.side()->tab(), SideColumn::Tab::loop) << tool;
    EXPECT_EQ(window.canvas()->status(), before) << tool;
    window.canvas()->setFocus();
    QTest::keyClick(window.canvas(), Qt::Key_5, Qt::AltModifier);
    EXPECT_NE(window.side()->tab(), SideColumn::Tab::loop) << tool;
  }
}

TEST_F(MainWindowTest, KeysOfTheToolInHandGoBeforeThoseOfCommands) {
  Canvas& canvas = *window.canvas();
  const std::pair<ToolId, Qt::Key> own[] = {{ToolId::drive, Qt::Key_R},
                                            {ToolId::lot, Qt::Key_R},
                                            {ToolId::dimension, Qt::Key_R},
                                            {ToolId::utility, Qt::Key_K}};
  for (const auto& [tool, key] : own) {
    canvas.set_tool(tool);
    QTest::keyClick(&canvas, key);
    EXPECT_EQ(canvas.tool(), tool);
    EXPECT_FALSE(canvas.status().contains("held"));
  }
  QTest::keyClick(&canvas, Qt::Key_W);
  EXPECT_EQ(canvas.tool(), ToolId::well) << "other letters take their tool";
}

TEST_F(MainWindowTest, AnAnswerToWhyKeepsNobodyFromAnotherTool) {
  draw();
  Canvas& canvas = *window.canvas();
  canvas.set_tool(ToolId::why);
  const QPoint at = canvas.rect().center();
  QTest::mouseClick(&canvas, Qt::LeftButton, {}, at);
  QTest::keyClick(&canvas, Qt::Key_V);
  EXPECT_EQ(canvas.tool(), ToolId::select);
  canvas.set_tool(ToolId::why);
  QTest::mouseClick(&canvas, Qt::LeftButton, {}, at);
  QTest::keyClick(&canvas, Qt::Key_Escape);
  EXPECT_EQ(canvas.tool(), ToolId::why) << "the answer first";
  QTest::keyClick(&canvas, Qt::Key_Escape);
  EXPECT_EQ(canvas.tool(), ToolId::select);
}

TEST_F(MainWindowTest, UndoNamesWhatItTakesBack) {
  EXPECT_FALSE(window.actions().action("edit.undo")->isEnabled());
  draw();
  EXPECT_EQ(window.actions().action("edit.undo")->text(), "Undo: Drawn");
  run("edit.undo");
  EXPECT_TRUE(window.document().plan().site.lot.empty());
  run("edit.redo");
  EXPECT_EQ(window.document().plan(), sample::half_acre());
}

TEST_F(MainWindowTest, UnitsAreSwitchedAsOneEntry) {
  draw();
  run("view.metric");
  EXPECT_EQ(window.document().plan().units, UnitSystem::metric);
  EXPECT_TRUE(window.actions().action("view.metric")->isChecked());
  run("edit.undo");
  EXPECT_EQ(window.document().plan().units, UnitSystem::us);
  EXPECT_TRUE(window.actions().action("view.us")->isChecked());
}

TEST_F(MainWindowTest, ClosingWithUnsavedChangesAsksInTheBarAndStays) {
  draw();
  window.close();
  EXPECT_TRUE(window.isVisible());
  ASSERT_TRUE(window.bar()->isVisible());
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  window.bar()->take(2);
  EXPECT_TRUE(window.isVisible());
  window.close();
  window.bar()->take(1);
  EXPECT_FALSE(window.isVisible());
}

TEST_F(MainWindowTest, AQuestionThatWasAskedForIsAnsweredByKeysAndOneThatComesUpTakesNoKey) {
  window.bar()->tell("other", "Saved by somebody else.", {{"Open theirs", {}}, {"Keep mine", {}}});
  EXPECT_TRUE(window.canvas()->hasFocus());
  window.bar()->withdraw("other");
  draw();
  run("file.new");
  ASSERT_TRUE(window.bar()->isVisible());
  EXPECT_TRUE(window.bar()->isAncestorOf(QApplication::focusWidget()));
  run("panel.drawing");
  EXPECT_TRUE(window.canvas()->hasFocus());
  run("panel.notice");
  QCoreApplication::processEvents();
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);  // drop the changes
  EXPECT_TRUE(window.document().plan().site.lot.empty());
  EXPECT_TRUE(window.canvas()->hasFocus());
}

TEST_F(MainWindowTest, F2MarksWhatStandsInTheFirstFieldWhereverTheKeyboardWas) {
  draw();
  window.selection().select_several(
      {{Selected::Kind::feature, sample::oak}, {Selected::Kind::feature, sample::maple}});
  run("panel.lot");
  run("edit.name");
  auto* line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
  ASSERT_NE(line, nullptr);
  QTest::keyClicks(line, "20 in");
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_DOUBLE_EQ(find_feature(window.document().plan().site, sample::maple)->trunk_diameter, 20 * 0.0254);
}

// 1280 by 800 pixels at half as large again are 853 by 533, and the frame of the window takes some 30 of
// them.
TEST_F(MainWindowTest, FitsASmallScreenAtHalfAsLargeAgain) {
  EXPECT_LE(window.minimumSizeHint().width(), 850);
  EXPECT_LE(window.minimumSizeHint().height(), 500);
  window.resize(850, 500);
  QCoreApplication::processEvents();
  EXPECT_LE(window.width(), 850);
  EXPECT_LE(window.height(), 500);
  auto* strip = window.findChild<ToolStrip*>();
  ASSERT_NE(strip, nullptr);
  EXPECT_GT(strip->columns(), 2);
  for (const auto* button : strip->findChildren<QToolButton*>())
    EXPECT_TRUE(strip->rect().contains(button->geometry())) << button->accessibleName().toStdString();
  EXPECT_GE(window.canvas()->width(), 300);
  window.resize(1600, 1000);
  QCoreApplication::processEvents();
  EXPECT_EQ(strip->columns(), 2);
}

TEST_F(MainWindowTest, TheMenuSaysWhichLanguageIsOnlyThatOfTheNextStart) {
  const std::string before = settings::language();
  QAction *english = window.actions().action("view.english"),
          *spanish = window.actions().action("view.spanish");
  spanish->trigger();
  EXPECT_TRUE(spanish->isChecked());
  EXPECT_TRUE(spanish->text().endsWith("from the next start"));
  EXPECT_TRUE(english->text().endsWith("until then"));
  EXPECT_TRUE(window.bar()->words().contains("started again"));
  english->trigger();
  EXPECT_EQ(english->text(), "English");
  EXPECT_EQ(spanish->text(), "Español");
  EXPECT_FALSE(window.bar()->isVisible());
  settings::keep_language(before);
}

TEST_F(MainWindowTest, OpeningOverUnsavedChangesAsksFirst) {
  const QString path = folder.filePath("other.underlawn");
  ASSERT_TRUE(save_plan(sample::tiny_lot(), path.toStdString()).has_value());
  draw();
  window.files().open(path);
  EXPECT_EQ(window.document().plan(), sample::half_acre());
  window.bar()->take(1);
  EXPECT_EQ(window.document().plan(), sample::tiny_lot());
}

TEST_F(MainWindowTest, WorkOfACrashIsOfferedInTheBarWithItsDate) {
  {
    Document died;
    KeptAside kept(died, folder.filePath("kept"), 1);
    died.commit(sample::half_acre(), "Drawn");
    kept.keep_now();
  }
  window.files().offer_left_behind();
  ASSERT_TRUE(window.bar()->isVisible());
  EXPECT_TRUE(window.bar()->words().contains(QString::number(QDate::currentDate().year() % 100)));
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  window.bar()->take(0);
  EXPECT_EQ(window.document().plan(), sample::half_acre());
  EXPECT_TRUE(window.document().modified());
}

TEST_F(MainWindowTest, FileThatCannotBeOpenedIsSaidInTheBar) {
  window.files().open(folder.filePath("none.underlawn"));
  EXPECT_TRUE(window.bar()->isVisible());
  EXPECT_TRUE(window.bar()->words().contains("none.underlawn"));
}

TEST_F(MainWindowTest, FinderRunsWhatWasTyped) {
  run("help.find");
  auto* finder = window.findChild<Finder*>();
  ASSERT_TRUE(finder->isVisible());
  QTest::keyClicks(finder->field(), "metres");
  QTest::keyClick(finder->field(), Qt::Key_Return);
  EXPECT_FALSE(finder->isVisible());
  EXPECT_EQ(window.document().plan().units, UnitSystem::metric);
}

TEST_F(MainWindowTest, FinderSaysThatNothingIsFoundAndLeavesWhenTheKeyboardDoes) {
  run("help.find");
  auto* finder = window.findChild<Finder*>();
  QTest::keyClicks(finder->field(), "qqqq");
  ASSERT_EQ(finder->list()->count(), 1);
  EXPECT_TRUE(finder->list()->item(0)->text().startsWith("No command is found"));
  QTest::keyClick(finder->field(), Qt::Key_Return);
  EXPECT_TRUE(finder->isVisible());
  QTest::keyClick(finder->field(), Qt::Key_2, Qt::AltModifier);
  EXPECT_FALSE(finder->isVisible());
  EXPECT_EQ(window.side()->tab(), SideColumn::Tab::loop);
  EXPECT_TRUE(window.side()->isAncestorOf(QApplication::focusWidget())) << "the panel keeps the keyboard";
}

TEST_F(MainWindowTest, AnotherLanguageIsSaidInTheBarAndMayStartAtOnce) {
  run("view.spanish");
  EXPECT_TRUE(window.bar()->words().contains("Español"));
  run("view.english");
  EXPECT_FALSE(window.bar()->telling("language"));
  draw();
  run("view.spanish");
  window.bar()->take(0);
  EXPECT_TRUE(window.isVisible());
  EXPECT_TRUE(window.bar()->words().contains("not saved")) << "what is not saved is asked for first";
  EXPECT_FALSE(window.wants_to_start_again());
  window.bar()->take(1);
  EXPECT_FALSE(window.isVisible());
  EXPECT_TRUE(window.wants_to_start_again());
  settings::keep_language("en");
}

TEST(Settings, OldOnesAreCarriedOverOnce) {
  const QString organisation = QApplication::organizationName();
  QApplication::setOrganizationName("Underlawn");
  QSettings().clear();
  QSettings("Unknown Organization", QApplication::applicationName()).setValue("theme", "dark");
  settings::carry_over();
  EXPECT_EQ(settings::theme(), ThemeChoice::dark);
  settings::keep_theme(ThemeChoice::light);
  settings::carry_over();
  EXPECT_EQ(settings::theme(), ThemeChoice::light) << "what was chosen since stays";
  QSettings().clear();
  QApplication::setOrganizationName(organisation);
}

TEST_F(MainWindowTest, EscClosesTheSheetOfKeys) {
  run("help.keys");
  auto* keys = window.findChild<KeySheet*>();
  ASSERT_TRUE(keys->isVisible());
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
  EXPECT_FALSE(keys->isVisible());
}

TEST_F(MainWindowTest, PagesOfTheSheetAreShownAndWritten) {
  draw();
  run("file.sheet");
  EXPECT_TRUE(window.sheet_strip()->isVisible());
  EXPECT_GT(window.sheet_strip()->pages(), 0);
  const QString path = folder.filePath("sheet.pdf");
  EXPECT_TRUE(window.sheet_strip()->write(path)) << window.sheet_strip()->said().toStdString();
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  EXPECT_TRUE(file.read(5) == "%PDF-");
  QTest::keyClick(window.sheet_strip(), Qt::Key_Escape);
  EXPECT_FALSE(window.sheet_strip()->isVisible());
}

TEST_F(MainWindowTest, SheetsArePickedAndWrittenEachIntoAFileOfItsOwn) {
  draw();
  run("file.sheet");
  SheetStrip* strip = window.sheet_strip();
  strip->pick({"proposal", "details"});
  EXPECT_EQ(strip->picked(), (QStringList{"proposal", "details"}));
  EXPECT_GE(strip->pages(), 3);
  ASSERT_TRUE(strip->write_each(folder.path())) << strip->said().toStdString();
  for (const char* end : {"*-proposal.pdf", "*-details.pdf"})
    EXPECT_EQ(QDir(folder.path()).entryList({end}).size(), 1) << end;
  strip->pick({});
  EXPECT_EQ(strip->pages(), 0);
  EXPECT_FALSE(strip->write(folder.filePath("none.pdf")));
}

// 1:200 of metric sheets is no "1 in = 16 ft" because the plan is in feet.
TEST_F(MainWindowTest, ScalesAreSaidInTheUnitsOfTheSheets) {
  draw();
  run("file.sheet");
  SheetStrip* strip = window.sheet_strip();
  EXPECT_TRUE(strip->said().contains("1 in = ")) << strip->said().toStdString();
  auto* units = called<QComboBox>(*strip, "Units of the sheets");
  units->setCurrentIndex(1);
  emit units->activated(1);
  ASSERT_TRUE(wait_until([&] { return !window.document().stale(); }));
  EXPECT_TRUE(strip->said().contains("1 : ")) << strip->said().toStdString();
  EXPECT_FALSE(strip->said().contains(" ft"));
  const auto* scales = called<QComboBox>(*strip, "Scale");
  for (int i = 1; i < scales->count(); ++i) EXPECT_TRUE(scales->itemText(i).startsWith("1 : ")) << i;
}

// Scale, language and units are the job's and go with the plan; paper and files are the person's own.
TEST_F(MainWindowTest, HowSheetsArePrintedIsRemembered) {
  draw();
  run("file.sheet");
  SheetStrip* strip = window.sheet_strip();
  const auto choose = [&](const QString& name, int index) {
    auto* box = called<QComboBox>(*strip, name);
    box->setCurrentIndex(index);
    emit box->activated(index);
    ASSERT_TRUE(wait_until([&] { return !window.document().stale(); }));
  };
  const Plan before = window.document().plan();
  choose("Scale", 3);
  choose("Units of the sheets", 1);
  choose("Language of the sheets", 1);
  // A crew's sheet in its language is no wish for the family's proposal.
  EXPECT_EQ(strip->setup().language, "es");
  EXPECT_EQ(window.document().plan().sheets.language, "");
  for (QCheckBox* box : strip->findChildren<QCheckBox*>())
    if (box->text() == "Always for this plan") box->click();
  ASSERT_TRUE(wait_until([&] { return !window.document().stale(); }));
  const SheetWishes& kept = window.document().plan().sheets;
  EXPECT_EQ(kept.scale, 180);
  EXPECT_EQ(kept.units, SheetUnits::metric);
  EXPECT_EQ(kept.language, "es");
  EXPECT_EQ(strip->setup().scale, 180);
  EXPECT_EQ(strip->setup().language, "es");
  EXPECT_EQ(fingerprint(before), fingerprint(window.document().plan()));
  choose("Paper", 3);
  choose("Files", 1);
  strip->close_strip();
  MainWindow another{folder.filePath("kept too")};
  another.document().commit(window.document().plan(), "Opened");
  ASSERT_TRUE(wait_until([&] { return !another.document().stale(); }));
  another.sheet_strip()->open();
  EXPECT_EQ(another.sheet_strip()->setup().paper, Paper::a3);
  EXPECT_EQ(another.sheet_strip()->setup().scale, 180);
  EXPECT_EQ(called<QComboBox>(*another.sheet_strip(), "Files")->currentIndex(), 1);
  EXPECT_EQ(called<QComboBox>(*another.sheet_strip(), "Language of the sheets")->currentIndex(), 1);
  QSettings().remove("sheets");
  window.document().undo();
  EXPECT_EQ(window.document().plan().sheets.language, "");
  another.document().start_new();
}

TEST_F(MainWindowTest, TabWalksThroughStripDrawingHeadlineAndPanelsInThatOrder) {
  draw();
  run("panel.loop");
  // Every widget that Tab reaches, with the left edge of the part of the window it is in.
  std::vector<const QWidget*> way;
  window.canvas()->setFocus();
  for (int presses = 0; presses < 300;
       ++presses) {  // in the drawing Tab walks through what is on the lot first
    QWidget* w = QApplication::focusWidget();
    ASSERT_NE(w, nullptr) << "after " << (way.empty() ? "nothing" : way.back()->metaObject()->className())
                          << " " << (way.empty() ? "" : way.back()->accessibleName().toStdString());
    EXPECT_TRUE(w->isVisible()) << w->metaObject()->className();
    if (way.size() > 1 && w == window.canvas()) break;
    if (way.empty() || way.back() != w) way.push_back(w);
    QTest::keyClick(w, Qt::Key_Tab);
    window.side()->show_tab(SideColumn::Tab::loop,
                            false);  // what the drawing picks comes into sight otherwise
  }
  EXPECT_EQ(QApplication::focusWidget(), window.canvas()) << "Tab comes back to where it began";
  const auto place = [&](const QString& name) {
    for (std::size_t i = 0; i < way.size(); ++i)
      if (way[i]->accessibleName().startsWith(name)) return static_cast<int>(i);
    return -1;
  };
  EXPECT_EQ(place("Drawing"), 0);
  EXPECT_LT(place("Drawing"), place("circuits placed"));
  EXPECT_LT(place("circuits placed"), place("Circuits"));
  EXPECT_LT(place("Circuits"), place("Loop diameter"));
  EXPECT_LT(place("Loop diameter"), place("Least spacing"));
  EXPECT_GT(place("Select and move"), place("Least spacing"))
      << "the strip comes last, before the drawing again";
}

TEST_F(MainWindowTest, WideWindowGivesTheReportItsOwnColumn) {
  draw();
  run("panel.loop");
  EXPECT_FALSE(window.side()->report()->isVisible());
  window.resize(2560, 1440);
  EXPECT_TRUE(window.side()->report()->isVisible());
  window.resize(1280, 800);
  EXPECT_FALSE(window.side()->report()->isVisible());
}

TEST_F(MainWindowTest, NoPageIsWiderThanItsColumn) {
  draw();
  auto* tabs = window.side()->findChild<QTabWidget*>();
  ASSERT_NE(tabs, nullptr);
  int pages = 0;
  for (int i = 0; i < tabs->count(); ++i) {
    tabs->setCurrentIndex(i);
    QApplication::processEvents();
    auto* area = qobject_cast<QScrollArea*>(tabs->widget(i));
    if (area == nullptr) continue;
    ++pages;
    EXPECT_LE(area->widget()->width(), area->viewport()->width()) << tabs->tabText(i).toStdString();
  }
  EXPECT_GE(pages, 6);
}

TEST_F(MainWindowTest, NumberOfTheReportShowsHowItCameAbout) {
  draw();
  window.side()->show_trace("buy.counted_pipe");
  EXPECT_TRUE(window.side()->trace()->isVisible());
  EXPECT_TRUE(window.side()->trace()->browser()->toPlainText().contains("coils + header and run"));
}
