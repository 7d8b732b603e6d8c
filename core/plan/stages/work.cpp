// SPDX-License-Identifier: GPL-3.0-or-later
// Who digs when, and what it all costs.
#include "cost/bill.h"
#include "cost/comparison.h"
#include "cost/crew_calendar.h"
#include "cost/joints.h"
#include "plan/coil_ends.h"
#include "plan/dated_crew.h"
#include "plan/stages/stages.h"

namespace underlawn {

// Who does what when, and what that comes to. Joints are those of the sized loop, so flow comes before.
void Stages::solve_crew(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  const FlowWishes cut = flow_as_cut(plan, outcome.layout, outcome.dig);
  const JobDrawn job{outcome.layout, outcome.dig, plan.wishes, cut, outcome.flow.get()};
  const int joints = count_joints(job, troubles.out.pricing ? Pricing{} : plan.pricing);
  CalendarIn when{without_notes(plan.site),
                  layout.serial,
                  order.serial,
                  plan.ground,
                  plan.dig,
                  dated_crew(plan),
                  joints,
                  test_duration(plan.test.procedure)};
  outcome.calendar = calendar.run(std::move(when), runs.calendar, stop, [&](const CalendarIn& i) {
    if (outcome.order == nullptr) return std::shared_ptr<const CrewCalendar>();
    return std::shared_ptr<const CrewCalendar>(std::make_shared<CrewCalendar>(
        make_calendar({i.site, outcome.layout, *outcome.order, i.ground, i.how, i.crew, i.joints, i.test})));
  });
  WorkIn done{without_notes(plan.site), layout.serial,         dig.serial,
              calendar.serial,          for_work(plan.wishes), joints};
  outcome.work = work.run(std::move(done), runs.work, stop, [&](const WorkIn& i) {
    if (outcome.calendar == nullptr || outcome.calendar->tasks.empty()) return std::optional<JobWork>();
    return std::optional(job_work(i.site, outcome.layout, outcome.dig, i.wishes, i.joints, *outcome.calendar,
                                  *outcome.order, plan.dig.excavator));
  });
}

// Cheap, so made anew each time.
void Stages::solve_prices(const Plan& plan, Outcome& outcome) {
  if (troubles.out.pricing || !outcome.work) return;
  const FlowWishes cut = flow_as_cut(plan, outcome.layout, outcome.dig);
  const JobDrawn job{outcome.layout, outcome.dig, plan.wishes, cut, outcome.flow.get()};
  outcome.bill = std::make_shared<const Bill>(
      make_bill(take_off(job, *outcome.work, plan.pricing), plan.pricing, plan.wishes));
  if (outcome.temperatures != nullptr)
    outcome.comparison = std::make_shared<const Comparison>(
        compare(outcome.temperatures->simulation, outcome.bill->net, plan.pricing.running, plan.thermal.years,
                heat_pump_priced(plan.pricing)));
}

}  // namespace underlawn
