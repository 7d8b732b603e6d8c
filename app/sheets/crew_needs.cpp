// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/crew_needs.h"

#include <algorithm>
#include <cmath>
#include <map>

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

// Most people at work at one moment of the day: counted as each bar begins.
int most_at_once(const CrewDayBars& day) {
  int most = 0;
  for (const CrewRow& at : day.rows)
    for (const CrewBar& begins : at.bars) {
      int now = 0;
      for (const CrewRow& row : day.rows)
        for (const CrewBar& bar : row.bars)
          if (bar.from <= begins.from + 1 && bar.to > begins.from + 1) now += people(row.station);
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

}  // namespace

BlockPtr who_when(const Plan&, const Outcome& outcome) {
  if (outcome.calendar == nullptr || outcome.calendar->tasks.empty()) return nullptr;
  const CrewCalendar& c = *outcome.calendar;
  const std::vector<CrewDayBars> days = bars_by_day(c);
  const std::vector<CrewStation> stations = stations_of(days);
  std::vector<Column> columns{{QObject::tr("Day", "of work"), Align::left, true}};
  for (CrewStation s : stations) columns.push_back({station_words(s), Align::left});
  columns.push_back({QObject::tr("People at once"), Align::right});
  std::vector<std::vector<Cell>> rows;
  for (const CrewDayBars& day : days) {
    auto shifts = shifts_of(day);
    std::vector<Cell> row{{day_words(c, day.day), std::nullopt, true}};
    for (CrewStation s : stations) row.push_back({shifts.contains(s) ? shift_words(c, shifts[s]) : "–"});
    row.push_back({QString::number(most_at_once(day)), std::nullopt, true});
    rows.push_back(std::move(row));
  }
  auto table = std::make_shared<Table>(
      QObject::tr("WHO IS NEEDED WHEN"), std::move(columns), std::move(rows), 10,
      QObject::tr(
          "From the first task of the day to the last, as the calendar has it; who waits between them "
          "helps the others. A machine and a truck each with who drives it, a coil maker at each rack, "
          "layers as a crew of %1 (common practice, no source). Every day besides: the competent person "
          "who looks at the trenches.")
          .arg(kLayers));
  table->keep_on_a_page();
  return table;
}

namespace {

// Tapes are sold so long; what lies between is no length that a crew has.
double tape_to_bring(UnitSystem units, double metres) {
  constexpr double kFoot = 0.3048;
  const std::vector<double> sold =
      units == UnitSystem::us ? std::vector<double>{50 * kFoot, 100 * kFoot, 200 * kFoot, 300 * kFoot}
                              : std::vector<double>{20, 30, 50, 100};
  for (double length : sold)
    if (metres <= length) return length;
  return 0;
}

QString tape_words(const Plan& plan, const Outcome& outcome) {
  const LongestTape longest = longest_tape(plan, outcome);
  const QString pull = QObject::tr("The longest pull is %1, from %2 to %3.")
                           .arg(shown_length(plan, longest.metres), longest.from, longest.to);
  const double tape = tape_to_bring(plan.units, longest.metres);
  if (tape == 0)
    return pull + " " +
           QObject::tr("No usual tape is as long: join two, or measure that one with an instrument.");
  const QString length = plan.units == UnitSystem::us ? QString("%1 ft").arg(std::lround(tape / 0.3048))
                                                      : QString("%1 m").arg(std::lround(tape));
  return QObject::tr("Two tapes of %1.").arg(length) + " " + pull;
}

}  // namespace

BlockPtr bring_and_fill(const Plan& plan, const Outcome& outcome) {
  if (outcome.stake_out.ties.empty()) return nullptr;
  std::vector<Item> items;
  const auto add = [&](const QString& lead, const QString& text) { items.push_back({"☐", lead, text}); };
  add(QObject::tr("Tapes and stakes"),
      tape_words(plan, outcome) + " " +
          QObject::tr("%1 stakes with their names on them.").arg(outcome.stake_out.ties.size()));
  add(QObject::tr("LOCATE TICKET"), QObject::tr("on this sheet, before anything is dug"));
  add(QObject::tr("TEST, FLUSH AND FILL RECORD, blank form"),
      QObject::tr("by the tester while it is done: pressures, flows, times, who saw it"));
  add(QObject::tr("AS BUILT FORM, nothing recorded yet"),
      QObject::tr("two tapes for every head, end, bend and joint, before it is covered"));
  return std::make_shared<Items>(QObject::tr("TO BRING AND TO FILL IN"), std::move(items), 9.5);
}

}  // namespace underlawn::sheet
