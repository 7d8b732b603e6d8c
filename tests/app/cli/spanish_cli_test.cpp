// SPDX-License-Identifier: GPL-3.0-or-later
// The verbs in another language: every word said, every number the same, and what programs read the same
// altogether.
#include <QProcess>
#include <QTemporaryDir>
#include <regex>
#include <sstream>

#include "cli/help.h"
#include "cli/verbs.h"
#include "files/atomic_file.h"
#include "files/plan_file.h"
#include "language/language.h"
#include "support/drawing_files.h"
#include "support/said.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

constexpr const char* kDeed =
    "Beginning at an iron pin; thence N 45°30'15\" E 120.50 ft; thence along a curve to the left with a "
    "radius of 50 "
    "feet and an arc of 30.20 feet\nthence S 10° W 80 ft\nthence 30 ft\ncontaining 3 acres\n";

class SpanishCli : public testing::Test {
 protected:
  void SetUp() override {
    Plan plan = sample::half_acre();
    plan.thermal.years = 1;
    put("a.underlawn", plan_to_text(plan));
    put("tiny.underlawn", plan_to_text(sample::tiny_lot()));
    put("deed.txt", kDeed);
    put("lot.dxf", sample::dxf_text(sample::in_order(sample::surveyed_lot())));
  }
  void put(const std::string& name, std::string_view text) const {
    ASSERT_TRUE(write_file(path(name), text).has_value());
  }
  std::string path(const std::string& name) const { return (folder_.path() + "/").toStdString() + name; }

  // Both outputs of a verb, in this process and in the language of this thread.
  std::string told(std::vector<std::string> words) const {
    const cli::Verb* verb = cli::find_verb(words[0]);
    words.erase(words.begin());
    for (std::string& word : words)
      if (word.ends_with(".underlawn") || word.ends_with(".txt")) word = path(word);
    std::ostringstream out, err;
    const auto arguments = cli::parse_arguments(*verb, words);
    if (!arguments) return arguments.error().message();
    verb->run(*arguments, {out, err});
    return without_paths(out.str() + err.str());
  }
  std::string without_paths(std::string text) const {
    const std::string folder = path("");
    for (std::size_t at = 0; (at = text.find(folder)) != std::string::npos;) {
      const std::size_t end = text.find_first_of(" :\n\"”", at);
      text.erase(at, end == std::string::npos ? end : end - at);
    }
    return text;
  }
  // As a shell sees it: both outputs.
  std::string run(const QStringList& words) const {
    QProcess process;
    process.setWorkingDirectory(folder_.path());
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.start(UNDERLAWN_PROGRAM, words);
    EXPECT_TRUE(process.waitForFinished(120'000)) << words.join(' ').toStdString();
    return process.readAllStandardOutput().toStdString();
  }

  QTemporaryDir folder_;
};

// The numbers of a text in rising order: another language may put its parts in another order.
std::vector<std::string> numbers_of(const std::string& text) {
  static const std::regex number("[0-9]+(?:[.,][0-9]+)*");
  std::vector<std::string> all(std::sregex_token_iterator(text.begin(), text.end(), number), {});
  std::ranges::sort(all);
  return all;
}

const std::vector<std::vector<std::string>> kVerbs = {{"check", "a.underlawn"},
                                                      {"check", "tiny.underlawn"},
                                                      {"figures", "a.underlawn"},
                                                      {"figures", "a.underlawn", "dig.bank"},
                                                      {"figures", "a.underlawn", "nothing"},
                                                      {"bill", "a.underlawn"},
                                                      {"calendar", "a.underlawn"},
                                                      {"calendar", "tiny.underlawn"},
                                                      {"as-built", "a.underlawn"},
                                                      {"deed", "deed.txt"},
                                                      {"resave", "a.underlawn"},
                                                      {"resave", "a.underlawn", "--strict"},
                                                      {"new", "a.underlawn"},
                                                      {"check", "none.underlawn"},
                                                      {"check"},
                                                      {"check", "a", "b"},
                                                      {"check", "--out"},
                                                      {"deed", "deed.txt", "--units", "ells"},
                                                      {"hours", "a.underlawn", "--year", "tenth"},
                                                      {"response", "a.underlawn", "--times", "ever"},
                                                      {"export", "a.underlawn", "--as", "dwg"}};

}  // namespace

TEST_F(SpanishCli, EveryWordOfAVerbIsSaid) {
  test::Listener listener(test::units_and({"underlawn", "USD", "CO", "PLAN", "FILE", "KEY", "House", "Septic",
                                           "Drain", "Well", "Power", "SYSTEM", "units", "adjust", "json",
                                           // of options and ids of findings
                                           "out", "year", "times", "check", "access", "coil", "run", "stakes",
                                           "trenches", "feature", "end", "machine", "trucks",
                                           // Roman numerals of steps
                                           "II", "III", "IV", "VI", "VII",
                                           // names of the sample and of pipe, units, a deed as it is typed
                                           "tank", "field", "Reserve", "line", "Maple", "Oak", "Birch", "DR",
                                           "sq", "cu", "AZ", "due", "north"}));
  // A deed's table holds the calls as they were typed between what is said: tests/core/said listens to its
  // words.
  for (const auto& words : kVerbs)
    if (words[0] != "deed") listener.hear(told(words));
  for (const cli::Verb& verb : cli::verbs())
    listener.hear(translated(verb.details) + translated(verb.summary));
  EXPECT_THAT(listener.unsaid(), IsEmpty());
}

TEST_F(SpanishCli, NumbersAreTheSameInBothLanguages) {
  for (const auto& words : kVerbs) {
    const std::string english = told(words);
    const SpeakHere spanish(catalogue_of("es"));
    EXPECT_EQ(numbers_of(told(words)), numbers_of(english)) << words[0] << " " << english;
  }
}

TEST_F(SpanishCli, WhatProgramsReadIsTheSame) {
  for (const QStringList& words :
       std::initializer_list<QStringList>{{"bill", "a.underlawn", "--json"},
                                          {"bill", "a.underlawn", "--csv"},
                                          {"stakes", "a.underlawn"},
                                          {"calendar", "a.underlawn", "--json"},
                                          {"as-built", "a.underlawn", "--json"},
                                          {"epanet", "a.underlawn"},
                                          {"drawing", "lot.dxf", "--json"},
                                          {"response", "a.underlawn"},
                                          {"size", "a.underlawn", "--draws", "0", "--json"},
                                          {"ways", "a.underlawn", "--json"},
                                          {"--man"}})
    EXPECT_EQ(run(QStringList{"--language", "es"} + words), run(words)) << words.join(' ').toStdString();
  run({"solve", "a.underlawn", "--out", "english"});
  run({"--language", "es", "solve", "a.underlawn", "--out", "spanish"});
  const auto results = [&](const std::string& folder) {
    return read_file(path(folder + "/results.json"), 64 << 20);
  };
  ASSERT_TRUE(results("english"));
  EXPECT_EQ(results("spanish"), results("english"));
}

TEST_F(SpanishCli, SpeaksSpanish) {
  EXPECT_THAT(run({"--language", "es", "slove"}), HasSubstr("no es ni un verbo ni un plan"));
  EXPECT_THAT(run({"--language", "es", "check", "tiny.underlawn"}), HasSubstr("1 error, "));
  EXPECT_THAT(run({"--language", "es", "check", "tiny.underlawn"}), HasSubstr("aceptados"));
  EXPECT_THAT(run({"--language", "es", "drawing", "lot.dxf"}), HasSubstr("llegaron: 13 de 13 objetos"));
  EXPECT_THAT(run({"drawing", "lot.dxf", "--json", "--language", "es"}), HasSubstr("no es trazo de un lote"));
  EXPECT_THAT(run({"--language", "fr", "check", "a.underlawn"}), HasSubstr("must be en or es"));
}

}  // namespace underlawn
