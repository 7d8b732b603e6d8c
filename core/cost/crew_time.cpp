// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/crew_time.h"

#include <algorithm>

#include "cost/crew_calendar.h"

namespace underlawn {

namespace {

double CrewTime::*time_at(CrewStation station) {
  switch (station) {
    case CrewStation::digging:
      return &CrewTime::digging;
    case CrewStation::making:
      return &CrewTime::making;
    case CrewStation::laying:
      return &CrewTime::laying;
    case CrewStation::joining:
      return &CrewTime::joining;
    case CrewStation::testing:
      return &CrewTime::testing;
    case CrewStation::filling:
      return &CrewTime::filling;
    case CrewStation::hauling:
      return &CrewTime::hauling;
  }
  return &CrewTime::digging;
}

}  // namespace

double days_of(double working_time, double day_length) {
  return working_time / day_length;
}

CrewTime times_of(const CrewCalendar& calendar) {
  CrewTime t;
  for (const CrewTask& task : calendar.tasks) {
    const double time = task.end - task.begin;
    t.*time_at(task.station) += time;
    if (task.station == CrewStation::digging) t.trench = std::max(t.trench, time);
    if (task.station == CrewStation::making) t.coil = std::max(t.coil, time);
    if (task.station == CrewStation::laying) t.waiting += task.waited;
  }
  t.dug = calendar.dug;
  t.laid = calendar.laid;
  t.open = calendar.filled;
  t.days = calendar.days_worked;
  return t;
}

}  // namespace underlawn
