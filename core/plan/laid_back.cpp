// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/laid_back.h"

#include <algorithm>

#include "cost/crew_calendar.h"
#include "flow/loop_test.h"
#include "plan/coil_ends.h"
#include "plan/dated_crew.h"

namespace underlawn {

std::optional<LaidBack> bill_if_laid_back(const Plan& plan, const Outcome& outcome) {
  DigWishes how = plan.dig;
  how.coil_sides = how.run_sides = Sides::slope;
  if (outcome.bill == nullptr || how == plan.dig) return std::nullopt;
  const Layout& layout = outcome.layout;
  const DigPlan dig = make_dig(layout, plan.wishes, plan.ground, terrain_of(outcome), how);
  const DigOrder order = make_dig_order(plan.site, layout, dig, plan.wishes, plan.ground, how);
  const int joints = outcome.work->joints;
  const CrewCalendar calendar = make_calendar({plan.site, layout, order, plan.ground, how, dated_crew(plan),
                                               joints, test_duration(plan.test.procedure)});
  const JobWork work = job_work(plan.site, layout, dig, plan.wishes, joints, calendar, order, how.excavator);
  // Pipe is ordered before anybody has seen the soil: its ends are those of the sides as planned.
  const FlowWishes cut = flow_as_cut(plan, layout, outcome.dig);
  const JobDrawn job{layout, dig, plan.wishes, cut, outcome.flow.get()};
  return LaidBack{make_bill(take_off(job, work, plan.pricing), plan.pricing, plan.wishes),
                  static_cast<int>(std::ranges::count(calendar.days, true, &CrewDay::reserve))};
}

}  // namespace underlawn
