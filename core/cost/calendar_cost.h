// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cost/crew_calendar.h"

namespace underlawn {

// The bill with the calendar's times, and the days paid that follow, for the sides that coil trenches are to
// have (`sloped`); the other column keeps its own reckoning. Unchanged where the calendar is empty.
Cost with_calendar(Cost cost, const CrewCalendar& calendar, bool sloped);

}  // namespace underlawn
