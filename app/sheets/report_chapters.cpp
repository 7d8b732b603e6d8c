// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/report_chapters.h"

#include <array>

namespace underlawn::sheet {

namespace {

struct Row {
  std::string_view begins;  // of keys, up to a dot
  std::string_view title;
};

constexpr std::array kRows{
    Row{"site", "The lot"},
    Row{"ground", "The ground as it is dug"},
    Row{"soil", "The soil"},
    Row{"climate", "Ground temperature"},
    Row{"weather", "Weather"},
    Row{"house", "The house"},
    Row{"unit", "The heat pump"},
    Row{"pipe", "Pipe"},
    Row{"coil", "The coil"},
    Row{"layout", "Layout"},
    Row{"trench", "Trenches"},
    Row{"header", "Header and supply run"},
    Row{"run", "Header and supply run"},
    Row{"crossing", "Crossings"},
    Row{"dig", "Earth"},
    Row{"crew", "The crew's time"},
    Row{"days", "The crew's time"},
    Row{"stake", "Stake-out"},
    Row{"flow", "Flow"},
    Row{"purge", "Flushing"},
    Row{"test", "Pressure test"},
    Row{"heat", "Heat"},
    Row{"loop", "Heat"},
    Row{"temperatures", "Water temperatures"},
    Row{"water", "Water temperatures"},
    Row{"year", "Water temperatures"},
    Row{"buy", "What is bought"},
    Row{"materials", "What is bought"},
    Row{"price", "Prices"},
    Row{"cost", "Cost"},
    Row{"running", "Running cost"},
};
constexpr std::string_view kOther = "Other figures";

std::string_view title_of(const std::string& key) {
  const std::string_view first = std::string_view(key).substr(0, key.find('.'));
  for (const Row& row : kRows)
    if (row.begins == first) return row.title;
  return kOther;
}

}  // namespace

std::vector<ReportChapter> report_chapters(const Figures& figures) {
  std::vector<ReportChapter> chapters;
  const auto begin = [&chapters](std::string_view title) {
    for (const ReportChapter& chapter : chapters)
      if (chapter.title == title) return;
    chapters.push_back({std::string(title), {}});
  };
  for (const Row& row : kRows) begin(row.title);
  begin(kOther);
  for (const Figure& f : figures.all())
    for (ReportChapter& chapter : chapters)
      if (chapter.title == title_of(f.key)) chapter.entries.push_back({&f, ""});
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
