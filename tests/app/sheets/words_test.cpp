// SPDX-License-Identifier: GPL-3.0-or-later
// Every sheet in another language: nothing of it stays English, and no number changes.
#include <gtest/gtest.h>

#include <QRegularExpression>
#include <fstream>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "app/support/written.h"
#include "files/plan_file.h"
#include "language/language.h"
#include "plan/solve.h"
#include "sheets/said_sheet.h"
#include "support/catalogues.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

const QDate kDay(2026, 5, 4);

struct Named {
  const char* name;
  Plan plan;
};

Plan sample_file(const char* name) {
  return load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn")->value;
}

const std::vector<Named>& plans() {
  static const std::vector<Named> all = {{"alder-lane", sample_file("alder-lane")},
                                         {"kestrel-bend", sample_file("kestrel-bend")},
                                         {"nothing laid", sample::tiny_lot()}};
  return all;
}

SheetSetup setup_for(const Plan& plan) {
  SheetSetup setup{plan.units == UnitSystem::us ? Paper::letter : Paper::a4, {}, kDay};
  setup.page_a_trench = true;
  return setup;
}

QStringList page_texts(const Sheet& sheet, int page) {
  return test::written_by([&](QPainter& painter) { sheet.paint(painter, page); });
}

// Keys of figures are no words: they are the same in the results file.
bool is_key(const QString& text) {
  static const QRegularExpression key(R"(^[a-z0-9_]+(\.[-A-Za-z0-9_]+)+( = ([-+0-9.e]+|nan|inf))?$)");
  return key.match(text.trimmed()).hasMatch();
}

void read(test::Unsaid& unsaid, const QStringList& texts) {
  for (const QString& text : texts) {
    static const QRegularExpression mark("\\b[0-9a-f]{12}\\b");  // of a plan, as solved
    if (is_key(text)) continue;
    unsaid.read(QString(text).remove(mark).toStdString());
    if (text.endsWith("…")) unsaid.close();  // cut short, and its bracket with it
  }
}

// Names that stand in the plans, units and signs. Everything else has to be said.
const std::set<std::string>& allowed() {
  static const std::set<std::string> all = {"ft",  "in",  "m",     "mm",  "cm", "gal", "gpm", "psi", "bar",
                                            "kPa", "cu",  "acres", "lb",  "pH", "day", "yd",  "sq",  "kW",
                                            "kWh", "Btu", "USD",   "EUR", "DR", "SDR", "min"};
  return all;
}

void add_words(const std::string& text, std::set<std::string>& words) {
  test::Unsaid reader;
  reader.read(text);
  words.insert(reader.words().begin(), reader.words().end());
}

// What the designer wrote into the plan: every text of its file but the words of the format, which are in
// small letters throughout. The plan's mark and its day stand on every sheet.
std::set<std::string> written_in(const Plan& plan, const Outcome& outcome) {
  std::set<std::string> words;
  const std::function<void(const nlohmann::json&)> walk = [&](const nlohmann::json& value) {
    if (value.is_string() &&
        std::ranges::any_of(value.get<std::string>(), [](char c) { return c >= 'A' && c <= 'Z'; }))
      add_words(value.get<std::string>(), words);
    if (value.is_structured())
      for (const auto& part : value) walk(part);
  };
  walk(nlohmann::json::parse(plan_to_text(plan)));
  add_words(outcome.fingerprint, words);
  words.insert({"May", "Monday", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"});  // a locale's own
  words.insert("each");  // unit of a line of the samples' own offer
  return words;
}

// Steps of digging are numbered so, in every language.
bool is_roman(const std::string& word) {
  return word.find_first_not_of("IVX") == std::string::npos;
}

std::vector<std::string> left_over(const test::Unsaid& unsaid, const std::set<std::string>& of_plan) {
  std::vector<std::string> words;
  for (const std::string& word : unsaid.words())
    if (!allowed().contains(word) && !of_plan.contains(word) && !is_roman(word)) words.push_back(word);
  return words;
}

// Of three digits and more, for clock and pages are set differently. Each once: a table that goes on over
// more pages says its heads again. Without "3 of 12", the numbers of pages, and without scales: longer words
// leave a plan less room.
std::set<QString> numbers(const Sheet& sheet) {
  static const QRegularExpression number(R"(\d[\d.,]+\d)");
  static const QRegularExpression set_otherwise(R"(\d+ (of|de) \d+|\(?1:\d+\)?|^\d+ (ft|m)$)");
  std::set<QString> all;
  for (int page = 0; page < sheet.pages(); ++page)
    for (const QString& text : page_texts(sheet, page))
      for (auto it = number.globalMatch(QString(text).remove(set_otherwise)); it.hasNext();)
        all.insert(it.next().captured());
  return all;
}

}  // namespace

TEST(SheetWords, NothingOfAnySheetIsUnsaid) {
  let_qt_speak();
  const SpeakHere here(&test::marking_language(UNDERLAWN_SPANISH));
  for (const Named& sample : plans()) {
    const Outcome outcome = solve(sample.plan);
    const std::set<std::string> of_plan = written_in(sample.plan, outcome);
    for (const SheetKind& kind : sheet_kinds()) {
      const SheetPtr sheet = kind.make(sample.plan, outcome, setup_for(sample.plan));
      for (int page = 0; page < sheet->pages(); ++page) {
        test::Unsaid unsaid;
        read(unsaid, page_texts(*sheet, page));
        EXPECT_THAT(left_over(unsaid, of_plan), testing::IsEmpty())
            << sample.name << " " << kind.name << " " << page + 1;
      }
    }
  }
}

TEST(SheetWords, NumbersAreTheSameInBothLanguages) {
  let_qt_speak();
  for (const Named& sample : plans()) {
    const Outcome outcome = solve(sample.plan);
    for (const SheetKind& kind : sheet_kinds()) {
      SheetSetup setup = setup_for(sample.plan);
      setup.language = "en";
      const SheetPtr english = make_sheet(kind, sample.plan, outcome, setup);
      setup.language = "es";
      const SheetPtr spanish = make_sheet(kind, sample.plan, outcome, setup);
      const auto in_english = numbers(*english), in_spanish = numbers(*spanish);
      std::vector<QString> only_english, only_spanish;
      std::ranges::set_difference(in_english, in_spanish, std::back_inserter(only_english));
      std::ranges::set_difference(in_spanish, in_english, std::back_inserter(only_spanish));
      EXPECT_THAT(only_english, testing::IsEmpty()) << sample.name << " " << kind.name;
      EXPECT_THAT(only_spanish, testing::IsEmpty()) << sample.name << " " << kind.name;
    }
  }
}
