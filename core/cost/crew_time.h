// SPDX-License-Identifier: GPL-3.0-or-later
// What every station of the crew's calendar works in all.
#pragma once

#include "dig/crew_wishes.h"

namespace underlawn {

struct CrewCalendar;

// Working time in s, from the first bucket on.
struct CrewTime {
  double digging = 0;  // machine time for everything, lines met by hand included
  double trench = 0;   // of it the longest step
  double making = 0;   // of all coils
  double coil = 0;     // of it the longest coil
  double laying = 0;   // of all coils
  double joining = 0;  // header and run laid, joints fused
  double testing = 0;
  double filling = 0;  // bedding and backfill
  double hauling = 0;  // of all trucks, from the first bucket into them on
  double dug = 0;      // when everything is dug
  double laid = 0;     // when the last coil lies in its trench
  double waiting = 0;  // of the coil crew for trenches
  double open = 0;     // when everything is filled in
  int days = 0;        // open, in whole days begun
  bool operator==(const CrewTime&) const = default;
};
double days_of(double working_time, double day_length = kWorkingDay);  // working days

CrewTime times_of(const CrewCalendar& calendar);

}  // namespace underlawn
