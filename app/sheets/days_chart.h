// SPDX-License-Identifier: GPL-3.0-or-later
// The days of the work as bars: what lies open when, for a family. No words but names, days and dates.
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

// A day of the bars: worked, kept for rain, or one between them on which nobody works. Dates only where a
// first day is named, and none is off without.
struct DaysColumn {
  QString number;  // "3", "+1"; "" of a day off
  QString date;    // "Mon 17"
  bool rain = false, off = false;
  double from = 0, to = 0;  // share of the width
};
std::vector<DaysColumn> days_columns(const Outcome& outcome);

namespace sheet {

bool days_chart_has_days_off(const Outcome& outcome);

// Null without a calendar.
BlockPtr days_chart(const Outcome& outcome);

}  // namespace sheet
}  // namespace underlawn
