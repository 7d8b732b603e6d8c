// SPDX-License-Identifier: GPL-3.0-or-later
// What the drawn job takes besides pipe and goods.
#pragma once

#include "cost/crew_time.h"
#include "cost/lot_torn.h"
#include "dig/dig_order.h"

namespace underlawn {

struct JobWork {
  int met_by_hand = 0;  // utilities that header and run cross
  int joints = 0;       // fused: joints.h
  LotTorn torn;
  CrewTime time;  // of the calendar
  bool operator==(const JobWork&) const = default;
};

// Of wishes only the section of the run is read. The lawn torn up is the ground used in that order of
// digging, where it has steps.
JobWork job_work(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes, int joints,
                 const CrewCalendar& calendar, const DigOrder& order, const Machine& excavator);

}  // namespace underlawn
