// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/coil_watch.h"

#include <algorithm>
#include <cmath>

#include "cost/crew_calendar.h"
#include "dig/cut_once.h"
#include "dig/dig_order.h"
#include "plan/dated_crew.h"

namespace underlawn {

namespace {

// The pipe of the first circuit. volume_of leaves out the heat pump, which is first.
LoopVolume coil_of(const LoopNetwork& loop) {
  const LoopVolume all = volume_of(loop);
  for (std::size_t i = 1; i < loop.pipes.size(); ++i)
    if (loop.pipes[i].part == LoopPart::circuit) return {{all.pipes[i - 1]}};
  return all;
}

// s by the clock from one working time of the calendar to a later one, days off left out.
double by_clock(const CrewWishes& crew, double from, double to) {
  const double day = std::max(crew.day_length, 3600.0);
  const double nights = std::floor(to / day) - std::floor(from / day);
  return to - from + nights * (86400 - day);
}

constexpr double kUnknown = 3600;  // s, where the calendar does not say

// s by the clock from where the coil of the step has been proved until it is covered: filled in early, or,
// where the run's pipes come over it, filled up to them.
double covering(const CrewCalendar& calendar, const CrewWishes& crew, int step) {
  double proved = -1, covered = -1;
  for (const CrewTask& t : calendar.tasks)
    if (t.station == CrewStation::testing && t.step == step) proved = t.end;
  for (const OpenTrench& o : calendar.open)
    if (o.step == step && o.filled_early) covered = o.to;
  for (const CrewTask& t : calendar.tasks)
    if (covered < 0 && t.station == CrewStation::filling && t.step == step && t.end > proved) covered = t.end;
  return proved < 0 || covered < proved ? kUnknown : std::max(60.0, by_clock(crew, proved, covered));
}

}  // namespace

std::vector<int> coils_covered_early(const Outcome& outcome) {
  std::vector<int> all;
  if (outcome.order == nullptr) return all;
  for (const DigStep& step : outcome.order->steps) {
    if (run_comes_over(step.work)) all.push_back(step.trench);
    all.insert(all.end(), step.into.begin(), step.into.end());
    all.insert(all.end(), step.filled_first.begin(), step.filled_first.end());
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

std::vector<CoilWatch> coil_watches(const Plan& plan, const Outcome& outcome) {
  std::vector<CoilWatch> all;
  if (!outcome.flow || outcome.layout.trenches.empty() || outcome.calendar == nullptr) return all;
  const std::vector<int> early = coils_covered_early(outcome);
  if (early.empty()) return all;
  const LoopVolume coil = coil_of(outcome.flow->loop);
  const CrewWishes crew = dated_crew(plan);
  for (std::size_t i = 0; i < outcome.order->steps.size(); ++i) {
    const int trench = outcome.order->steps[i].trench;
    if (std::find(early.begin(), early.end(), trench) == early.end()) continue;
    const auto hold = coil_hold(plan.test, coil, covering(*outcome.calendar, crew, static_cast<int>(i)));
    if (hold) all.push_back({trench, *hold});
  }
  return all;
}

}  // namespace underlawn
