// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/calendar_cost.h"

namespace underlawn {

Cost with_calendar(Cost cost, const CrewCalendar& calendar, bool sloped) {
  Estimate& e = sloped ? cost.sloped : cost.vertical;
  if (calendar.tasks.empty() || e.lines.empty()) return cost;
  e.time = times_of(calendar);
  for (CostLine& line : e.lines) {
    if (line.key != "crew_day") continue;
    e.total -= line.sum;
    line.amount = days_paid(e.time, calendar.day_length);
    line.sum = line.amount * line.price;
    e.total += line.sum;
  }
  return cost;
}

}  // namespace underlawn
