// SPDX-License-Identifier: GPL-3.0-or-later
// The days of the work as bars: what lies open when, for a family. No words but names and the days' numbers.
#pragma once

#include <QRectF>
#include <QString>
#include <vector>

#include "sheets/block.h"

namespace underlawn {

// A row of the bars, in days from the first bucket: 0.5 is the first day's noon.
struct DaysRow {
  struct Bar {
    double from = 0, to = 0;
  };
  QString name;
  std::vector<Bar> bars;  // in order, apart
  bool test = false;      // the loop under pressure; else open ground
};
// Every coil trench, the smaller trench, the test of the whole loop. Empty without a calendar.
std::vector<DaysRow> days_rows(const Outcome& outcome);

namespace sheet {

// Null without a calendar.
BlockPtr days_chart(const Outcome& outcome);

}  // namespace sheet
}  // namespace underlawn
