// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/report_chapters.h"

#include <array>

#include "base/say.h"

namespace underlawn::sheet {

namespace {

struct Row {
  std::string_view begins;  // of keys; the longest that fits counts
  std::string_view title;
};

constexpr std::array kRows{
    Row{"site", mark("The lot")},
    Row{"ground", mark("The ground as it is dug")},
    Row{"soil", mark("The soil")},
    Row{"climate", mark("Ground temperature")},
    Row{"weather", mark("Weather")},
    Row{"house", mark("The house")},
    Row{"unit", mark("The heat pump")},
    Row{"pipe", mark("Pipe")},
    Row{"coil", mark("The coil")},
    Row{"layout", mark("Layout")},
    Row{"trench", mark("Trenches")},
    Row{"header", mark("Header and supply run")},
    Row{"run", mark("Header and supply run")},
    Row{"crossing", mark("Crossings")},
    Row{"dig", mark("Earth")},
    Row{"order", mark("Order of digging")},
    Row{"crew", mark("The crew's time")},
    Row{"days", mark("The crew's time")},
    Row{"stake", mark("Stake-out")},
    Row{"flow", mark("Flow")},
    Row{"purge", mark("Flushing")},
    Row{"test", mark("Pressure test")},
    Row{"record", mark("Test, flushing and fill")},
    Row{"heat", mark("Heat")},
    Row{"loop", mark("Heat")},
    Row{"temperatures", mark("Water temperatures")},
    Row{"water", mark("Water temperatures")},
    Row{"year", mark("Water temperatures")},
    Row{"buy", mark("What is bought")},
    Row{"materials", mark("What is bought")},
    Row{"price", mark("Prices")},
    Row{"cost", mark("Cost")},
    Row{"run.discount", mark("Running cost")},
    Row{"run.inflation", mark("Running cost")},
    Row{"run.years", mark("Running cost")},
    Row{"run.electricity", mark("Running cost")},
    Row{"run.heating", mark("Running cost")},
    Row{"run.cooling", mark("Running cost")},
    Row{"run.unit", mark("Running cost")},
    Row{"run.loop", mark("Running cost")},
    Row{"run.other", mark("Running cost")},
    Row{"survey", mark("The lot")},
    Row{"calendar", mark("The crew's time")},
    Row{"counting", mark("What is bought")},
    Row{"need", mark("What is bought")},
    Row{"amount", mark("What is bought")},
    Row{"terms", mark("Cost")},
    Row{"bill", mark("Cost")},
    Row{"built", mark("As built: what was really dug")},
};
constexpr std::string_view kOther = mark("Other figures");

// "run" of "run.length", "run.other" of "run.other_1.fuel"; not "run" of "running".
bool begins(const std::string& key, std::string_view with) {
  if (!key.starts_with(with)) return false;
  return key.size() == with.size() || key[with.size()] == '.' || key[with.size()] == '_';
}

std::string_view title_of(const std::string& key) {
  const Row* best = nullptr;
  for (const Row& row : kRows)
    if (begins(key, row.begins) && (best == nullptr || row.begins.size() > best->begins.size())) best = &row;
  return best == nullptr ? kOther : best->title;
}

}  // namespace

std::vector<ReportChapter> report_chapters(const Figures& figures) {
  std::vector<ReportChapter> chapters;
  const auto begin = [&chapters](std::string_view title) {
    const std::string said = translated(title);
    for (const ReportChapter& chapter : chapters)
      if (chapter.title == said) return;
    chapters.push_back({said, {}});
  };
  for (const Row& row : kRows) begin(row.title);
  begin(kOther);
  for (const Figure& f : figures.all())
    for (ReportChapter& chapter : chapters)
      if (chapter.title == translated(title_of(f.key))) chapter.entries.push_back({&f, ""});
  std::erase_if(chapters, [](const ReportChapter& c) { return c.entries.empty(); });
  for (std::size_t c = 0; c < chapters.size(); ++c)
    for (std::size_t i = 0; i < chapters[c].entries.size(); ++i)
      chapters[c].entries[i].number = std::to_string(c + 1) + "." + std::to_string(i + 1);
  return chapters;
}

std::map<std::string, std::string> numbers_of(const std::vector<ReportChapter>& chapters) {
  std::map<std::string, std::string> numbers;
  for (const ReportChapter& chapter : chapters)
    for (const ReportEntry& entry : chapter.entries) numbers[entry.figure->key] = entry.number;
  return numbers;
}

}  // namespace underlawn::sheet
