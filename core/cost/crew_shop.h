// SPDX-License-Identifier: GPL-3.0-or-later
// The shop behind the calendar: stations with several hands, passed in the order of digging.
#pragma once

#include "cost/crew_calendar.h"

namespace underlawn {

struct ShopRun {
  std::vector<CrewTask> tasks;
  std::vector<OpenTrench> open;                                  // `clock` not filled in
  double dug = 0, laid = 0, joined = 0, tested = 0, filled = 0;  // s
};
ShopRun run_shop(const CalendarAsk& ask);

// s that go for the utilities which a step meets, laid bare by hand before the machine comes near.
double hand_time(const DigStep& step, const Site& site, const Layout& layout, const CrewWishes& crew);

// s, that included; spoil trucked off waits for the trucks.
double digging_time(const DigStep& step, const CalendarAsk& ask);

}  // namespace underlawn
