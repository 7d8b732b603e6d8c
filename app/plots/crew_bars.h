// SPDX-License-Identifier: GPL-3.0-or-later
// The crew's calendar as bars: a block for the staking before it, a block for every day, a row for every
// hand, hours across; hatched where lines are laid bare by hand. One drawing for panel and sheet.
#pragma once

#include <QColor>
#include <QFont>
#include <QRectF>
#include <QString>
#include <array>
#include <vector>

#include "cost/crew_calendar.h"
#include "plan/outcome.h"
#include "plan/plan.h"

class QPainter;

namespace underlawn {

struct CrewBar {
  std::size_t task = 0;     // in CrewCalendar::tasks
  double from = 0, to = 0;  // s from the day's first hour
};

struct CrewRow {
  CrewStation station = CrewStation::digging;
  int who = 1;
  std::vector<CrewBar> bars;
};

struct CrewDayBars {
  int day = 0;  // from 0
  std::vector<CrewRow> rows;
};

// Tasks cut at the end of the day and gone on with in the next; hands that do nothing on a day have no row
// there.
std::vector<CrewDayBars> bars_by_day(const CrewCalendar& calendar);

// What is done by hand beside the tasks of the calendar.
struct HandWork {
  int stakes = 0;                // set before the first day
  double staking = 0;            // s that takes
  std::vector<double> exposing;  // s of each step of the order, from its beginning: lines laid bare
};
HandWork hand_work(const Plan& plan, const Outcome& outcome);

struct CrewBarsStyle {
  QFont font;
  QColor text, faint, rule, bar_text;
  std::array<QColor, kCrewStations> fill;
  double unit = 1;                    // a normal line, device units
  int from_day = 0, to_day = 100000;  // those drawn: from_day and on, before to_day
  HandWork hand = {};
  static CrewBarsStyle on_paper(const QFont& font, double unit);
};

// Words that can be translated.
QString station_words(CrewStation station);
QString day_words(const CrewCalendar& calendar, int day);  // "Day 2, Tuesday 2026-05-19"
QString task_said(const CrewTask& task, const CrewCalendar& calendar, const DigOrder& order);  // one sentence

double crew_bars_height(const CrewCalendar& calendar, const CrewBarsStyle& style);
// From the top of `area` down, as wide as it. The task `chosen`, if any, gets a ring in `ring`.
void paint_crew_bars(QPainter& painter, const CrewCalendar& calendar, const DigOrder& order,
                     const QRectF& area, const CrewBarsStyle& style, int chosen = -1,
                     const QColor& ring = {});
// The task under a place of that drawing, -1 for none.
int task_at(const CrewCalendar& calendar, const QRectF& area, const CrewBarsStyle& style, QPointF place);

}  // namespace underlawn
