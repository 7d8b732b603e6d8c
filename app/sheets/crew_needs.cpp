// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/crew_needs.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "dig/protection.h"
#include "plots/crew_bars.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

// People at a station's one hand: a coil of 800 ft of pipe is let down by two. Common practice, no source.
constexpr int kLayers = 2;

int people(CrewStation station) {
  return station == CrewStation::laying ? kLayers : 1;
}

QString clock(const CrewCalendar& c, double t) {
  const long minutes = std::lround((c.begins + t) / 60) % (24 * 60);
  return QString("%1:%2").arg(minutes / 60).arg(minutes % 60, 2, 10, QChar('0'));
}

// One station on one day, all its hands.
struct Shift {
  int hands = 0;
  double from = 1e9, to = 0;  // s from the day's first hour
};

std::map<CrewStation, Shift> shifts_of(const CrewDayBars& day) {
  std::map<CrewStation, Shift> shifts;
  for (const CrewRow& row : day.rows) {
    Shift& shift = shifts[row.station];
    ++shift.hands;
    for (const CrewBar& bar : row.bars) {
      shift.from = std::min(shift.from, bar.from);
      shift.to = std::max(shift.to, bar.to);
    }
  }
  return shifts;
}

// Somebody is below the edge, or digs by hand: `more` people come to those at the stations.
struct Below {
  double from = 0, to = 0;  // s from the day's first hour
  int more = 0;
};

// One above who watches, and where a shield stands its machine's driver. Nobody works alone below: common
// practice, no source.
int beside_the_joiner(Sides sides) {
  return sides == Sides::stay_out ? 0 : sides == Sides::shield ? 2 : 1;
}
constexpr int kByHand = 2;  // one digs, one watches; the driver is at the excavator's station

std::vector<Below> below_on(const Plan& plan, const CrewCalendar& c, const CrewDayBars& day,
                            const HandWork& hand) {
  std::vector<Below> all;
  for (const CrewRow& row : day.rows)
    for (const CrewBar& bar : row.bars) {
      const CrewTask& task = c.tasks[bar.task];
      if (row.station == CrewStation::joining && is_entered(plan.dig.run_sides))
        all.push_back({bar.from, bar.to, beside_the_joiner(plan.dig.run_sides)});
      if (row.station != CrewStation::digging || task.step < 0) continue;
      const double exposing = hand.exposing[static_cast<std::size_t>(task.step)];
      const double to = std::min(bar.to, task.begin + exposing - day.day * c.day_length);
      if (exposing > 0 && to > bar.from) all.push_back({bar.from, to, kByHand});
    }
  std::ranges::sort(all, {}, &Below::from);
  return all;
}

// Most people at work at one moment of the day: counted as each bar begins.
int most_at_once(const CrewDayBars& day, const std::vector<Below>& below) {
  int most = 0;
  for (const CrewRow& at : day.rows)
    for (const CrewBar& begins : at.bars) {
      const auto on = [&](double from, double to) { return from <= begins.from + 1 && to > begins.from + 1; };
      int now = 0;
      for (const CrewRow& row : day.rows)
        for (const CrewBar& bar : row.bars)
          if (on(bar.from, bar.to)) now += people(row.station);
      for (const Below& b : below)
        if (on(b.from, b.to)) now += b.more;
      most = std::max(most, now);
    }
  return most;
}

std::vector<CrewStation> stations_of(const std::vector<CrewDayBars>& days) {
  std::vector<CrewStation> all;
  for (int s = 0; s < kCrewStations; ++s)
    for (const CrewDayBars& day : days)
      if (std::ranges::any_of(day.rows, [&](const CrewRow& r) { return r.station == CrewStation(s); })) {
        all.push_back(CrewStation(s));
        break;
      }
  return all;
}

QString shift_words(const CrewCalendar& c, const Shift& shift) {
  const QString hours = QString("%1–%2").arg(clock(c, shift.from), clock(c, shift.to));
  return shift.hands > 1 ? QString("%1 × %2").arg(shift.hands).arg(hours) : hours;
}

QString hours(const CrewCalendar& c, const std::vector<Below>& below) {
  QStringList all;
  for (const Below& b : below) all << QString("%1–%2").arg(clock(c, b.from), clock(c, b.to));
  return all.isEmpty() ? "–" : all.join(", ");
}

// Who is there besides those at the stations, and why.
QString above_words(const Plan& plan) {
  QStringList all;
  if (is_entered(plan.dig.run_sides)) {
    all << QObject::tr(
        "Above: nobody is below alone; one more stands above, watches the sides and calls for help.");
    if (plan.dig.run_sides == Sides::shield)
      all << QObject::tr(
          "The excavator's driver stays too: he alone moves the shield, and only when nobody is below; no "
          "bucket and no load over anybody, 1926.651(e).");
  }
  all << QObject::tr(
      "Where a line is dug for by hand: one digs, one watches, the driver keeps the machine off.");
  return all.join(" ");
}

QString who_note(const Plan& plan) {
  return QObject::tr(
             "From the first task of the day to the last, as the calendar has it; who waits between them "
             "helps the others. A machine and a truck each with who drives it, a coil maker at each rack, "
             "layers as a crew of %1 (common practice, no source). Every day besides: the competent person "
             "who looks at the trenches.")
             .arg(kLayers) +
         " " + above_words(plan);
}

}  // namespace

BlockPtr who_when(const Plan& plan, const Outcome& outcome) {
  if (outcome.calendar == nullptr || outcome.calendar->tasks.empty()) return nullptr;
  const CrewCalendar& c = *outcome.calendar;
  const HandWork hand = hand_work(plan, outcome);
  const std::vector<CrewDayBars> days = bars_by_day(c);
  const std::vector<CrewStation> stations = stations_of(days);
  std::vector<Column> columns{{QObject::tr("Day", "of work"), Align::left, true}};
  for (CrewStation s : stations) columns.push_back({station_words(s), Align::left});
  columns.push_back({QObject::tr("Above", "who watches"), Align::left});
  columns.push_back({QObject::tr("People at once"), Align::right});
  std::vector<std::vector<Cell>> rows;
  for (const CrewDayBars& day : days) {
    auto shifts = shifts_of(day);
    const std::vector<Below> below = below_on(plan, c, day, hand);
    std::vector<Cell> row{{day_words(c, day.day), std::nullopt, true}};
    for (CrewStation s : stations) row.push_back({shifts.contains(s) ? shift_words(c, shifts[s]) : "–"});
    row.push_back({hours(c, below)});
    row.push_back({QString::number(most_at_once(day, below)), std::nullopt, true});
    rows.push_back(std::move(row));
  }
  auto table = std::make_shared<Table>(QObject::tr("WHO IS NEEDED WHEN"), std::move(columns), std::move(rows),
                                       10, who_note(plan));
  table->keep_on_a_page();
  return table;
}

}  // namespace underlawn::sheet
