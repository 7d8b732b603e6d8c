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
    Row{"site", QObject::tr("The lot")},
    Row{"ground", QObject::tr("The ground as it is dug")},
    Row{"soil", QObject::tr("The soil")},
    Row{"climate", QObject::tr("Ground temperature")},
    Row{"weather", QObject::tr("Weather")},
    Row{"house", QObject::tr("The house")},
    Row{"unit", QObject::tr("The heat pump")},
    Row{"pipe", QObject::tr("Pipe")},
    Row{"coil", QObject::tr("The coil")},
    Row{"layout", QObject::tr("Layout")},
    Row{"trench", QObject::tr("Trenches")},
    Row{"header", QObject::tr("Header and supply run")},
    Row{"run", QObject::tr("Header and supply run")},
    Row{"crossing", QObject::tr("Crossings")},
    Row{"dig", QObject::tr("Earth")},
    Row{"crew", QObject::tr("The crew's time")},
    Row{"days", QObject::tr("The crew's time")},
    Row{"stake", QObject::tr("Stake-out")},
    Row{"flow", QObject::tr("Flow")},
    Row{"purge", QObject::tr("Flushing")},
    Row{"test", QObject::tr("Pressure test")},
    Row{"heat", QObject::tr("Heat")},
    Row{"loop", QObject::tr("Heat")},
    Row{"temperatures", QObject::tr("Water temperatures")},
    Row{"water", QObject::tr("Water temperatures")},
    Row{"year", QObject::tr("Water temperatures")},
    Row{"buy", QObject::tr("What is bought")},
    Row{"materials", QObject::tr("What is bought")},
    Row{"price", QObject::tr("Prices")},
    Row{"cost", QObject::tr("Cost")},
    Row{"running", QObject::tr("Running cost")},
};
constexpr std::string_view kOther = QT_TR_NOOP("Other figures");

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
