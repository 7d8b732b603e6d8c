// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/coil_watch.h"

#include <algorithm>

#include "cost/crew_calendar.h"
#include "dig/cut_once.h"
#include "dig/dig_order.h"

namespace underlawn {

namespace {

// The pipe of the first circuit. volume_of leaves out the heat pump, which is first.
LoopVolume coil_of(const LoopNetwork& loop) {
  const LoopVolume all = volume_of(loop);
  for (std::size_t i = 1; i < loop.pipes.size(); ++i)
    if (loop.pipes[i].part == LoopPart::circuit) return {{all.pipes[i - 1]}};
  return all;
}

// s from where the coil has been proved until it is covered, of those proved apart the longest.
double longest_covering(const CrewCalendar& calendar) {
  double longest = 3600;
  for (const CrewTask& proved : calendar.tasks) {
    if (proved.station != CrewStation::testing || proved.step < 0) continue;
    for (const OpenTrench& o : calendar.open)
      if (o.step == proved.step && o.filled_early) longest = std::max(longest, o.to - proved.end);
  }
  return longest;
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

std::optional<CoilHold> coil_watch(const Plan& plan, const Outcome& outcome) {
  if (!outcome.flow || outcome.layout.trenches.empty() || outcome.calendar == nullptr) return std::nullopt;
  if (coils_covered_early(outcome).empty()) return std::nullopt;
  const auto hold = coil_hold(plan.test, coil_of(outcome.flow->loop), longest_covering(*outcome.calendar));
  return hold ? std::optional(*hold) : std::nullopt;
}

}  // namespace underlawn
