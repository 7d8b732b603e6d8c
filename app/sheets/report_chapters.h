// SPDX-License-Identifier: GPL-3.0-or-later
// Figures sorted into the chapters of the calculation report and numbered there.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/figure.h"

namespace underlawn::sheet {

struct ReportEntry {
  const Figure* figure;
  std::string number;  // "3.12"
};

struct ReportChapter {
  std::string title;
  std::vector<ReportEntry> entries;
};

// In the order of the table of chapters; a figure that no row of it claims stands in the last, "Other
// figures". Chapters without figures are left out. The figures must outlive them.
std::vector<ReportChapter> report_chapters(const Figures& figures);

// Number of each key.
std::map<std::string, std::string> numbers_of(const std::vector<ReportChapter>& chapters);

}  // namespace underlawn::sheet
