// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/works_at.h"

#include <algorithm>

#include "cost/crew_calendar.h"
#include "dig/dig_order.h"

namespace underlawn {

const DigStep& step_of(const Outcome& outcome, int step) {
  return outcome.order->steps[static_cast<std::size_t>(step)];
}

namespace {

const CrewTask* task_of(const CrewCalendar& calendar, CrewStation station, int step) {
  for (const CrewTask& t : calendar.tasks)
    if (t.station == station && t.step == step && !t.bedding) return &t;
  return nullptr;
}

// A trench that another's earth fills keeps its own heap until the loader comes.
double cleared_at(const CrewCalendar& calendar, int step) {
  const CrewTask* fills = task_of(calendar, CrewStation::filling, step);
  return fills != nullptr ? fills->end : calendar.filled;
}

double share_at(const CrewTask* task, double at) {
  if (task == nullptr || at <= task->begin) return 0;
  return task->end > task->begin ? std::min(1.0, (at - task->begin) / (task->end - task->begin)) : 1;
}

// The step whose earth fills this one, the last of several; -1 where the loader fills it.
int caster_of(const Outcome& outcome, const OpenTrench& open) {
  const auto& steps = outcome.order->steps;
  const DigStep& own = step_of(outcome, open.step);
  int last = -1;
  for (std::size_t i = 0; i < steps.size(); ++i)
    if (own.kind == DigKind::trench && std::ranges::count(steps[i].into, own.trench) > 0)
      last = static_cast<int>(i);
  return open.filled_early ? last : -1;
}

}  // namespace

std::optional<EarthLies> earth_lies(const Outcome& outcome, int step) {
  if (!outcome.calendar || !outcome.order) return std::nullopt;
  const CrewTask* digs = task_of(*outcome.calendar, CrewStation::digging, step);
  if (digs == nullptr || step_of(outcome, step).spoil.empty()) return std::nullopt;
  return EarthLies{digs->begin, cleared_at(*outcome.calendar, step)};
}

std::vector<PieceAt> works_at(const Outcome& outcome, double at) {
  std::vector<PieceAt> all;
  if (!outcome.calendar || !outcome.order) return all;
  for (const OpenTrench& open : outcome.calendar->open) {
    const CrewTask* digs = task_of(*outcome.calendar, CrewStation::digging, open.step);
    if (digs == nullptr || at <= digs->begin) continue;
    PieceAt piece;
    piece.step = open.step;
    piece.dug = share_at(digs, at);
    piece.filled = open.to <= at;
    piece.caster = caster_of(outcome, open);
    const CrewTask* fills = piece.caster < 0 ? task_of(*outcome.calendar, CrewStation::filling, open.step)
                                             : task_of(*outcome.calendar, CrewStation::digging, piece.caster);
    piece.back = piece.filled ? 1 : share_at(fills, at);
    piece.earth = at < cleared_at(*outcome.calendar, open.step) && !step_of(outcome, open.step).spoil.empty();
    all.push_back(piece);
  }
  return all;
}

}  // namespace underlawn
