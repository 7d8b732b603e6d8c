// SPDX-License-Identifier: GPL-3.0-or-later
// The window under a language that puts every text it was given into brackets: what stands outside all
// brackets was never handed to a translator.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QListWidget>
#include <QMenuBar>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTest>
#include <QTranslator>
#include <map>
#include <set>

#include "app/support/wait.h"
#include "app/support/window_texts.h"
#include "base/say.h"
#include "canvas/canvas.h"
#include "language/language.h"
#include "support/catalogues.h"
#include "support/drawing_files.h"
#include "support/sample_plans.h"
#include "window/as_built_panel.h"
#include "window/drawing_reader.h"
#include "window/import_card.h"
#include "window/kitchen_view.h"
#include "window/main_window.h"
#include "window/notice_bar.h"
#include "window/page_picture.h"
#include "window/picture_card.h"
#include "window/sheet_strip.h"
#include "window/side_column.h"
#include "window/size_panel.h"
#include "window/ways_panel.h"

using namespace underlawn;

namespace {

// What is the same in every language: signs of units and currencies, endings of files, names of keys,
// languages, and the name of the program.
const std::set<std::string> kSame = {
    "Underlawn", "English", "Español", "Ctrl", "Alt", "Shift", "Del",    "Up",        "Down", "Enter", "Esc",
    "Tab",       "ft",      "yd",      "gal",  "gpm", "psi",   "kPa",    "kW",        "kWh",  "Btu",   "MBtu",
    "mm",        "cm",      "km",      "kg",   "lb",  "min",   "hp",     "mPa",       "USD",  "CO",    "pH",
    "PDF",       "DXF",     "dxf",     "json", "csv", "png",   "Letter", "Fahrenheit"};

// "in" is a unit behind a number and a word elsewhere.
const QRegularExpression kInches(R"((?<=\d)\s*in\b)");

// Names of the plan in brackets, so that they are told from words.
std::string named(const std::string& name) {
  return name.empty() ? name : "⟦" + name + "⟧";
}

void name_things(Plan& plan) {
  for (Feature& f : plan.site.features) f.name = named(f.name);
  plan.title = {named("Alder"),    named("14 Alder Lane"), named("Owner"),
                named("Designer"), named("555"),           named("note")};
}

// Something of every kind on the lot, and something on every page.
Plan rich_plan() {
  Plan plan = sample::half_acre();
  plan.thermal.years = 1;
  name_things(plan);
  plan.site.heights = {{sample::feet(10, 10), 1}, {sample::feet(90, 90), 1.5}, {sample::feet(20, 100), 2}};
  Dimension d;
  d.from = sample::feet(10, 10);
  d.to = sample::feet(40, 10);
  plan.dimensions = {d};
  plan.survey.deed.text = "N 0 E 30 m\nN 90 E 40 m\nS 0 E 30 m\nN 90 W 39.9 m\n";
  Sighting s;
  s.name = named("P1");
  s.method = SightingMethod::two_distances;
  s.from = "lot 1";
  s.to = "lot 2";
  s.first = s.second = 30;
  plan.survey.notebook = {s};
  plan.test.readings = {{0, 620'000, {}}, {600, 610'000, {}}, {1800, 600'000, 15.0}};
  plan.record.test.start = "2026-05-14 09:30";
  plan.record.test.end = "2026-05-14 10:00";
  plan.record.flush = {FlushReading{}};
  plan.record.flush[0].flow = 0.002;
  plan.record.fill.freezing_point = -3;
  BuiltTrench short_one;
  short_one.number = 1;
  short_one.length = 20;
  plan.as_built.trenches = {short_one};
  return plan;
}

// Other sides of the pages: what shows only under another choice.
std::vector<Plan> other_sides(const Plan& rich) {
  std::vector<Plan> all(4, rich);
  all[0].units = UnitSystem::metric;
  all[0].thermal.load_source = LoadSource::hours;
  all[0].wishes.aim = Aim::mix;
  all[1].thermal.climate_source = ClimateSource::typed;
  all[1].thermal.weather_source = WeatherSource::file;
  all[1].flow.fluid = Fluid::propylene_glycol;
  all[1].flow.mass_fraction = 0.2;
  all[1].wishes.level_floor = !rich.wishes.level_floor;
  all[2].wishes.trench_depth = -1;  // refused everywhere
  all[2].wishes.direction = 0.3;
  all[3].wishes.pattern = CoilPattern::four_pipes;
  all[3].dig.slope = 1.0;
  all[3].dig.coil_sides = Sides::slope;
  all[3].flow.header_sizes = {rich.wishes.header_pipe};
  return all;
}

struct WordsTest : testing::Test {
  QTemporaryDir folder;

  void TearDown() override {
    speak_everywhere(nullptr);
    for (QTranslator* t : QCoreApplication::instance()->findChildren<QTranslator*>()) {
      QCoreApplication::removeTranslator(t);
      delete t;
    }
  }
};

// Goes through the whole window and reads it at every stop.
class Journey {
 public:
  Journey(const QString& folder, WindowTexts& texts)
      : folder_(folder), window_(folder + "/kept"), texts_(texts) {
    DrawingReader::set_program(UNDERLAWN_PROGRAM);
    window_.resize(1600, 1000);
    window_.show();
    QApplication::setActiveWindow(&window_);
  }
  ~Journey() { window_.document().start_new(); }

  void go() {
    look();
    take(rich_plan());
    tabs();
    for (const Plan& plan : other_sides(rich_plan())) {
      take(plan);
      tabs();
    }
    take(rich_plan());
    things();
    tools();
    over_the_window();
    sheets();
    cards();
    notices();
  }
  void searches() {
    take(rich_plan());
    run("panel.find_ways");
    ASSERT_TRUE(wait_until([&] { return !window_.side()->ways_panel()->service().busy(); }));
    look();
    run("panel.size_loop");
    ASSERT_TRUE(wait_until([&] { return !window_.findChild<SizePanel*>()->service().busy(); }, 600'000));
    look();
  }

 private:
  void run(std::string_view id) {
    window_.actions().action(id)->trigger();
    QCoreApplication::processEvents();
  }
  void look() {
    QCoreApplication::processEvents();
    texts_.read(&window_, [](const QWidget* w) { return qobject_cast<const KitchenView*>(w) != nullptr; });
  }
  void take(const Plan& plan) {
    window_.document().commit(plan, "");
    ASSERT_TRUE(wait_until([&] { return !window_.document().stale(); }));
  }
  void tabs() {
    for (const Command& c : commands()) {
      if (c.group != CommandGroup::panel || c.id == "panel.find_ways" || c.id == "panel.size_loop") continue;
      if (c.id == "panel.lot_by_deed" || c.id == "panel.drawing") continue;
      run(c.id);
      const Outcome* outcome = window_.document().outcome();
      if (c.id == "panel.as_built" && outcome != nullptr && !outcome->layout.trenches.empty()) {
        ASSERT_TRUE(wait_until([&] { return window_.side()->as_built_panel()->shown() != nullptr; }));
      }
      look();
    }
  }
  void things() {
    using Kind = Selected::Kind;
    const auto pick = [&](Selected what) {
      window_.selection().select(what);
      look();
    };
    for (const Feature& f : window_.document().plan().site.features) pick({Kind::feature, f.id, -1});
    for (Kind kind : {Kind::lot, Kind::entry, Kind::height, Kind::header, Kind::run, Kind::dimension})
      pick({kind, 0, -1});
    pick({Kind::lot_edge, 0, 0});
    pick({Kind::trench, 1, -1});
    window_.selection().clear();
  }
  void tools() {
    for (const Command& c : commands()) {
      if (!c.id.starts_with(kToolPrefix)) continue;
      run(c.id);
      texts_.read(window_.canvas()->status(), QString::fromUtf8(c.id.data()));
      QTest::mouseClick(window_.canvas(), Qt::LeftButton, Qt::NoModifier, window_.canvas()->rect().center());
      texts_.read(window_.canvas()->status(), QString::fromUtf8(c.id.data()));
      QTest::keyClick(window_.canvas(), Qt::Key_Escape);
    }
    run("tool.select");
  }
  void over_the_window() {
    for (const char* id : {"help.find", "help.keys", "help.about"}) {
      run(id);
      look();
      QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    }
  }
  void sheets() {
    run("file.sheet");
    look();
    window_.sheet_strip()->close_strip();
  }
  void cards() {
    auto parts = sample::surveyed_lot();
    const std::string dxf = sample::dxf_text(sample::in_order(parts));
    QFile file(folder_ + "/lot.dxf");
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(dxf.data(), static_cast<qint64>(dxf.size()));
    file.close();
    window_.import_card()->read(file.fileName());
    ASSERT_TRUE(wait_until([&] { return !window_.import_card()->reading(); }));
    look();
    window_.import_card()->close_card();
    run("file.picture");
    look();
    window_.picture_card()->close_card();
  }
  void notices() {
    window_.files().open(folder_ + "/none.underlawn");
    look();
    window_.bar()->take(1);
    look();
  }

  QString folder_;
  MainWindow window_;
  WindowTexts& texts_;
};

// Words outside brackets, each with the first text it stands in.
std::map<std::string, std::string> unsaid(const std::function<void(WindowTexts&)>& read) {
  std::map<std::string, std::string> found;
  WindowTexts texts([&](QString text, const QString& where) {
    const std::string said = where.toStdString() + ": " + text.toStdString();
    test::Unsaid words;
    words.read(text.remove(kInches).toStdString());
    for (const std::string& word : words.words())
      if (!kSame.contains(word)) found.emplace(word, said);
  });
  read(texts);
  return found;
}

std::string told(const std::map<std::string, std::string>& found) {
  std::string all;
  for (const auto& [word, where] : found) all += "\n“" + word + "” in " + where;
  return all;
}

}  // namespace

TEST_F(WordsTest, TheWholeWindowIsSaid) {
  speak_everywhere(&test::marking_language(UNDERLAWN_SPANISH));
  let_qt_speak();
  const auto found = unsaid([&](WindowTexts& texts) { Journey(folder.path(), texts).go(); });
  EXPECT_TRUE(found.empty()) << told(found);
}

TEST_F(WordsTest, WhatSearchesFindIsSaid) {
  speak_everywhere(&test::marking_language(UNDERLAWN_SPANISH));
  let_qt_speak();
  const auto found = unsaid([&](WindowTexts& texts) { Journey(folder.path(), texts).searches(); });
  EXPECT_TRUE(found.empty()) << told(found);
}

// The words are other ones, the numbers, places and findings are not: without its brackets the marked window
// is the English one.
TEST_F(WordsTest, OnlyWordsChangeWithTheLanguage) {
  const auto all_of = [&] {
    std::set<std::string> all;
    WindowTexts texts([&](QString text, const QString&) {
      all.insert(
          text.remove(QChar(0x27e6)).remove(QChar(0x27e7)).remove(folder.path()).toLower().toStdString());
    });
    Journey(folder.path(), texts).go();
    return all;
  };
  const std::set<std::string> english = all_of();
  speak_everywhere(&test::marking_language(UNDERLAWN_SPANISH));
  let_qt_speak();
  const std::set<std::string> marked = all_of();
  std::vector<std::string> other;
  std::ranges::set_symmetric_difference(english, marked, std::back_inserter(other));
  EXPECT_THAT(other, testing::IsEmpty());
}

TEST_F(WordsTest, CommandsAreFoundByTheirSpanishWordsWithOrWithoutAccents) {
  speak("es");
  let_qt_speak();
  EXPECT_EQ(find_commands("deshacer").front()->id, "edit.undo");
  EXPECT_EQ(find_commands("árbol").front()->id, "tool.tree");
  EXPECT_EQ(find_commands("arbol").front()->id, "tool.tree");
  EXPECT_EQ(find_commands("  ZANJA ").front()->id, "tool.trench");
  EXPECT_TRUE(find_commands("no hay tal cosa").empty());
}

TEST_F(WordsTest, KeysAreCalledAsTheSystemCallsThem) {
  EXPECT_EQ(key_words(*find_command("edit.delete")), "Del");
  speak("es");
  let_qt_speak();
  EXPECT_EQ(key_words(*find_command("edit.delete")), "Supr");  // as engraved on a Spanish keyboard
  EXPECT_EQ(key_words(*find_command("edit.redo")), "Ctrl+Mayús+Z");
}

TEST_F(WordsTest, NoLetterOpensTwoMenusOrEntries) {
  for (const char* language : {"en", "es"}) {
    speak(language);
    let_qt_speak();
    MainWindow window(folder.path() + "/kept");
    const auto letters_of = [&](const QList<QAction*>& actions) {
      std::map<QChar, QString> letters;
      for (const QAction* a : actions) {
        const qsizetype at = a->text().indexOf(QRegularExpression("&[^&]"));
        if (at < 0) continue;
        const auto [before, fresh] = letters.emplace(a->text().at(at + 1).toLower(), a->text());
        EXPECT_TRUE(fresh) << language << ": " << a->text().toStdString() << ", "
                           << before->second.toStdString();
      }
      return letters.size();
    };
    EXPECT_EQ(letters_of(window.menuBar()->actions()), 6u);
    for (const QAction* menu : window.menuBar()->actions()) letters_of(menu->menu()->actions());
  }
}
