// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/works_at.h"

#include <algorithm>

#include "cost/crew_calendar.h"
#include "dig/dig_order.h"

namespace underlawn {

namespace {

const CrewTask* task_of(const CrewCalendar& calendar, CrewStation station, int step) {
  for (const CrewTask& t : calendar.tasks)
    if (t.station == station && t.step == step && !t.bedding) return &t;
  return nullptr;
}

}  // namespace

std::vector<PieceAt> works_at(const Outcome& outcome, double at) {
  std::vector<PieceAt> all;
  if (!outcome.calendar || !outcome.order) return all;
  for (const OpenTrench& open : outcome.calendar->open) {
    const CrewTask* digs = task_of(*outcome.calendar, CrewStation::digging, open.step);
    if (digs == nullptr || at <= digs->begin) continue;
    PieceAt piece;
    piece.step = open.step;
    piece.dug = digs->end > digs->begin ? std::min(1.0, (at - digs->begin) / (digs->end - digs->begin)) : 1;
    piece.filled = open.to <= at;
    // A trench that another's earth fills keeps its own heap until the loader comes.
    const CrewTask* fills = task_of(*outcome.calendar, CrewStation::filling, open.step);
    const bool cleared = at >= (fills != nullptr ? fills->end : outcome.calendar->filled);
    const DigStep& step = outcome.order->steps[static_cast<std::size_t>(open.step)];
    piece.earth = !cleared && !step.spoil.empty();
    all.push_back(piece);
  }
  return all;
}

}  // namespace underlawn
