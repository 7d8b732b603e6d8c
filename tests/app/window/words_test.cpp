// SPDX-License-Identifier: GPL-3.0-or-later
// The window under a language that puts every text it was given into brackets: what stands outside all
// brackets was never handed to a translator.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QMenuBar>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTranslator>
#include <map>
#include <set>

#include "app/support/wait.h"
#include "app/support/window_journey.h"
#include "base/say.h"
#include "language/language.h"
#include "support/catalogues.h"
#include "support/drawing_files.h"
#include "window/drawing_reader.h"
#include "window/import_card.h"

using namespace underlawn;

namespace {

// What is the same in every language: signs of units and currencies, endings of files, names of keys,
// languages, and the name of the program.
const std::set<std::string> kSame = {"Underlawn", "English", "Espa",  "ol",  "Ctrl", "Alt", "Shift", "Del",
                                     "Up",        "Down",    "Enter", "Esc", "Tab",  "ft",  "cu",    "yd",
                                     "gal",       "gpm",     "psi",   "kPa", "kW",   "kWh", "Btu",   "MBtu",
                                     "mm",        "cm",      "km",    "kg",  "lb",   "min", "mPa",   "USD",
                                     "CO",        "pH",      "PDF",   "DXF", "dxf",  "csv", "png"};

// "in" is a unit behind a number and a word elsewhere.
const QRegularExpression kInches(R"((?<=\d)\s*in\b)");

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
  const auto found = unsaid([&](WindowTexts& texts) { WindowJourney(folder.path(), texts).go(); });
  EXPECT_TRUE(found.empty()) << told(found);
}

TEST_F(WordsTest, WhatSearchesFindIsSaid) {
  speak_everywhere(&test::marking_language(UNDERLAWN_SPANISH));
  let_qt_speak();
  const auto found = unsaid([&](WindowTexts& texts) { WindowJourney(folder.path(), texts).searches(); });
  EXPECT_TRUE(found.empty()) << told(found);
}

// The words are other ones, the numbers, places and findings are not: without its brackets the marked window
// is the English one.
TEST_F(WordsTest, OnlyWordsChangeWithTheLanguage) {
  const auto all_of = [&] {
    std::set<std::string> all;
    WindowTexts texts([&](QString text, const QString&) {
      text.remove(QChar(0x27e6)).remove(QChar(0x27e7)).remove(folder.path());
      if (text.contains(" pages, 1 in")) return;  // longer words may take a smaller scale on a sheet
      // Are there only while a solve, or what a tool asks for, takes long.
      if (text.trimmed().endsWith("working…", Qt::CaseInsensitive)) return;
      if (text.trimmed().endsWith("working out what each costs…", Qt::CaseInsensitive)) return;
      all.insert(text.trimmed().toLower().toStdString());
    });
    WindowJourney(folder.path(), texts).go();
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

// They are made by another process, which has to be told the language.
TEST_F(WordsTest, WhatIsRemarkedOnADrawingIsSpanish) {
  DrawingReader::set_program(UNDERLAWN_PROGRAM);
  speak("es");
  let_qt_speak();
  MainWindow window(folder.path() + "/kept");
  const QString path = folder.path() + "/lot.dxf";
  write_file_of(path, sample::dxf_text(sample::in_order(sample::surveyed_lot())));
  window.import_card()->read(path);
  ASSERT_TRUE(wait_until([&] { return !window.import_card()->reading(); }));
  QString all;
  WindowTexts texts([&](const QString& text, const QString&) { all += text + '\n'; });
  texts.read(window.import_card(), [](const QWidget*) { return false; });
  EXPECT_TRUE(all.contains("UTF-8")) << all.toStdString();  // the remark is there
  EXPECT_FALSE(all.contains("They were read")) << all.toStdString();
  window.document().start_new();
}
