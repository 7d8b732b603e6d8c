// SPDX-License-Identifier: GPL-3.0-or-later
// The days of the work and what is open when, told from works_at as the pictures are drawn from it.
#include <QLocale>
#include <algorithm>
#include <functional>
#include <map>

#include "cost/crew_calendar.h"
#include "dig/dates.h"
#include "dig/dig_order.h"
#include "language/language.h"
#include "sheets/contents.h"
#include "sheets/family_facts.h"
#include "sheets/works_at.h"

namespace underlawn {

using sheet::text_of;

namespace {

constexpr double kTrace = 0.005;   // a share that is not worth a word
constexpr int kSmaller = 1 << 30;  // header and run, told as one, behind all trenches

// Of every trench, by its number, how much of it there is; 0..1.
using Shares = std::map<int, double>;

double volume_of(const DigStep& step) {
  return length(step.line) * step.width * step.depth;
}

Shares shares(const Outcome& outcome, double at, const std::function<double(const PieceAt&)>& share) {
  Shares all;
  double smaller = 0, done = 0;
  for (const DigStep& step : outcome.order->steps)
    if (step.kind != DigKind::trench) smaller += volume_of(step);
  for (const PieceAt& piece : works_at(outcome, at)) {
    const DigStep& step = step_of(outcome, piece.step);
    if (step.kind == DigKind::trench)
      all[step.trench] = share(piece);
    else
      done += share(piece) * volume_of(step);
  }
  if (smaller > 0) all[kSmaller] = done / smaller;
  return all;
}

Shares dug_at(const Outcome& outcome, double at) {
  return shares(outcome, at, [](const PieceAt& p) { return p.dug; });
}
Shares back_at(const Outcome& outcome, double at) {
  return shares(outcome, at, [](const PieceAt& p) { return p.back; });
}
Shares open_at(const Outcome& outcome, double at) {
  return shares(outcome, at, [](const PieceAt& p) { return p.dug - p.back; });
}

QString name_of(int trench) {
  return trench == kSmaller ? QObject::tr("the smaller trench") : QObject::tr("trench %1").arg(trench);
}

// Of a share that went from `before` to `now`.
QString part_words(int trench, double before, double now) {
  const QString name = name_of(trench);
  if (now < 1 - kTrace)
    return before > kTrace ? QObject::tr("more of %1").arg(name) : QObject::tr("part of %1").arg(name);
  return before > kTrace ? QObject::tr("the rest of %1").arg(name) : name;
}

// "1 to 4", "1, 2".
QString numbers_words(const std::vector<int>& numbers) {
  QStringList words;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t j = i;
    while (j + 1 < numbers.size() && numbers[j + 1] == numbers[j] + 1) ++j;
    if (j > i + 1)
      words << QObject::tr("%1 to %2", "numbers of trenches").arg(numbers[i]).arg(numbers[j]);
    else
      for (std::size_t k = i; k <= j; ++k) words << QString::number(numbers[k]);
    i = j + 1;
  }
  return words.join(", ");
}

// Whole trenches, told together.
QString whole_words(const std::vector<int>& trenches) {
  if (trenches.size() == 1) return name_of(trenches.front());
  return trenches.empty() ? QString() : QObject::tr("trenches %1").arg(numbers_words(trenches));
}

QString grown_words(const Shares& before, const Shares& now) {
  std::vector<int> whole;
  QStringList parts;
  for (const auto& [trench, share] : now) {
    const auto was = before.find(trench);
    const double then = was == before.end() ? 0 : was->second;
    if (share <= then + kTrace) continue;
    if (share >= 1 - kTrace && then <= kTrace && trench != kSmaller)
      whole.push_back(trench);
    else
      parts << part_words(trench, then, share);
  }
  if (!whole.empty()) parts.prepend(whole_words(whole));
  return parts.join(", ");
}

QString laid_words(const CrewCalendar& calendar, const Outcome& outcome, double from, double to) {
  std::vector<int> trenches;
  for (const CrewTask& task : calendar.tasks)
    if (task.station == CrewStation::laying && task.step >= 0 && task.end > from + 1 && task.end <= to + 1)
      trenches.push_back(step_of(outcome, task.step).trench);
  std::ranges::sort(trenches);
  return whole_words(trenches);
}

bool busy(const CrewCalendar& calendar, double from, double to,
          const std::function<bool(const CrewTask&)>& with) {
  return std::ranges::any_of(
      calendar.tasks, [&](const CrewTask& t) { return t.end > from + 1 && t.begin < to - 1 && with(t); });
}

QString sentence_of(const Outcome& outcome, double from, double to, bool last) {
  const CrewCalendar& c = *outcome.calendar;
  QStringList words;
  const auto tell = [&words](const QString& what, const QString& which) {
    if (!which.isEmpty()) words << what.arg(which);
  };
  tell(QObject::tr("Dug: %1."), grown_words(dug_at(outcome, from), dug_at(outcome, to)));
  tell(QObject::tr("Pipe laid in: %1."), laid_words(c, outcome, from, to));
  if (busy(c, from, to, [](const CrewTask& t) { return t.station == CrewStation::joining; }))
    words << QObject::tr("Pipes are joined.");
  if (busy(c, from, to, [](const CrewTask& t) { return t.station == CrewStation::testing && t.step < 0; }))
    words << QObject::tr("The loop is filled with water and tested under pressure.");
  tell(QObject::tr("Filled back: %1."), grown_words(back_at(outcome, from), back_at(outcome, to)));
  if (last) words << QObject::tr("The lawn is raked and sown.");
  if (words.isEmpty()) words << QObject::tr("The work goes on.");
  tell(QObject::tr("Open at night: %1."), open_then(outcome, to));
  return words.join(" ");
}

// "19 May"; "" where no first day is given.
QString date_of(const Outcome& outcome, int day) {
  if (!outcome.calendar || day >= static_cast<int>(outcome.calendar->days.size())) return "";
  const QDate date =
      QDate::fromString(text_of(outcome.calendar->days[static_cast<std::size_t>(day)].date), Qt::ISODate);
  return date.isValid() ? locale_spoken().toString(date, QObject::tr("MMMM d", "a date")) : QString();
}

int open_trenches(const Outcome& outcome, double at) {
  const Shares open = open_at(outcome, at);
  return static_cast<int>(std::ranges::count_if(
      open, [](const auto& one) { return one.first != kSmaller && one.second > kTrace; }));
}

// Their number grows only where a digging begins and shrinks only where a filling ends.
int most_ever(const Outcome& outcome) {
  int most = 0;
  for (const CrewTask& task : outcome.calendar->tasks)
    if (task.station == CrewStation::digging)
      for (const double share : {0.02, 0.5, 0.98})
        most = std::max(most, open_trenches(outcome, task.begin + share * (task.end - task.begin)));
  return most;
}

}  // namespace

namespace {

struct Nights {
  int nights = 0, gaps = 0;  // times that no work is done for a day or more
  bool all_weekends = true;  // and those are Saturdays and Sundays
  bool operator==(const Nights&) const = default;
};

QDate date_at(const CrewCalendar& calendar, std::size_t day) {
  return day < calendar.days.size() ? QDate::fromString(text_of(calendar.days[day].date), Qt::ISODate)
                                    : QDate();
}

// Over the nights after each working day, those over days without work too.
std::map<int, Nights> nights_open(const Outcome& outcome) {
  std::map<int, Nights> all;
  const CrewCalendar& c = *outcome.calendar;
  for (int d = 1; d < c.days_worked; ++d) {
    const QDate evening = date_at(c, static_cast<std::size_t>(d) - 1),
                next = date_at(c, static_cast<std::size_t>(d));
    const int nights = evening.isValid() && next.isValid() ? static_cast<int>(evening.daysTo(next)) : 1;
    for (const auto& [trench, share] : open_at(outcome, d * c.day_length)) {
      if (share <= kTrace) continue;
      Nights& own = all[trench];
      own.nights += nights;
      own.gaps += nights > 1;
      for (int off = 1; off < nights; ++off) own.all_weekends &= evening.addDays(off).dayOfWeek() > 5;
    }
  }
  return all;
}

QString gaps_words(const Nights& n) {
  if (n.gaps == 0) return "";
  if (!n.all_weekends) return QObject::tr("over days off too");
  return n.gaps == 1 ? QObject::tr("over the weekend too") : QObject::tr("over %1 weekends too").arg(n.gaps);
}

QString nights_of(const QString& which, const Nights& n, bool each) {
  QString nights = n.nights == 1 ? QObject::tr("1 night") : QObject::tr("%1 nights").arg(n.nights);
  if (each) nights = QObject::tr("%1 each").arg(nights);
  const QString gaps = gaps_words(n);
  const QString words = QObject::tr("%1 for %2", "a trench, nights").arg(which, nights);
  return gaps.isEmpty() ? words : words + ", " + gaps;
}

// What has joints, and what no other trench's earth fills, waits for the test of the whole loop.
bool longest_waits_for_test(const Outcome& outcome) {
  const auto& open = outcome.calendar->open;
  const auto longest = std::ranges::max_element(open, {}, &OpenTrench::clock);
  return longest != open.end() && longest->to >= outcome.calendar->tested - 1;
}

}  // namespace

QString nights_words(const Outcome& outcome) {
  if (!outcome.calendar || !outcome.order) return "";
  std::vector<std::pair<Nights, std::vector<int>>> told;
  for (const auto& [trench, nights] : nights_open(outcome)) {
    const auto same = std::ranges::find_if(
        told, [&](const auto& one) { return one.first == nights && trench != kSmaller; });
    if (same == told.end())
      told.push_back({nights, {trench}});
    else
      same->second.push_back(trench);
  }
  QStringList words;
  for (const auto& [nights, trenches] : told)
    words << nights_of(whole_words(trenches), nights, trenches.size() > 1);
  if (words.isEmpty()) return QObject::tr("nothing.");
  const QString why =
      longest_waits_for_test(outcome)
          ? " " + QObject::tr(
                      "The longest waits for the pressure test: joints stay in sight until it is "
                      "passed.")
          : QString();
  return words.join("; ") + "." + why;
}

QString open_then(const Outcome& outcome, double at) {
  if (!outcome.calendar || !outcome.order) return "";
  return grown_words({}, open_at(outcome, at));
}

std::vector<WorkDay> work_days(const Outcome& outcome) {
  std::vector<WorkDay> days;
  if (!outcome.work || !outcome.calendar || !outcome.order) return days;
  const CrewTime& time = outcome.work->time;
  const double day = outcome.calendar->day_length;
  const int count = time.days;
  for (int d = 1; d <= count && d <= 60; ++d) {
    const double from = (d - 1) * day, to = std::min(d * day, outcome.calendar->filled);
    WorkDay now;
    const QString date = date_of(outcome, d - 1);
    now.title = date.isEmpty() ? QObject::tr("Day %1 of %2").arg(d).arg(count)
                               : QObject::tr("Day %1 of %2, %3").arg(d).arg(count).arg(date);
    now.at = to;
    now.dug = time.dug > 0 ? std::clamp(d * day / time.dug, 0.0, 1.0) : 1;
    now.sentence = sentence_of(outcome, from, to, d == count);
    now.moment = d * day >= time.open - 1 ? LotMoment::closed : LotMoment::digging;
    days.push_back(now);
  }
  return days;
}

std::optional<MostOpen> most_open(const Outcome& outcome) {
  if (!outcome.calendar || !outcome.order) return std::nullopt;
  std::optional<MostOpen> most;
  const double day = outcome.calendar->day_length;
  for (int d = 1; d <= outcome.calendar->days_worked; ++d) {
    const double at = std::min(d * day, outcome.calendar->filled);
    const int open = open_trenches(outcome, at);
    if (open > 0 && (!most || open > most->trenches)) most = MostOpen{at, d, open, 0};
  }
  if (most) most->ever = std::max(most->trenches, most_ever(outcome));
  return most;
}

std::optional<LastDays> last_days(const Plan& plan, const Outcome& outcome, const QDate& start) {
  if (!start.isValid() || !outcome.calendar || outcome.calendar->days_worked < 1) return std::nullopt;
  CrewWishes crew = plan.crew;
  crew.start = start.toString(Qt::ISODate).toStdString();
  QDate first = start;
  while (is_weekdays(crew.weekdays) && !works_on(crew.weekdays, first.dayOfWeek())) first = first.addDays(1);
  const int worked = outcome.calendar->days_worked, all = static_cast<int>(outcome.calendar->days.size());
  return LastDays{first, first.addDays(calendar_day(crew, worked - 1)),
                  first.addDays(calendar_day(crew, std::max(all, worked) - 1))};
}

QString days_off(const Plan& plan) {
  QStringList free;
  for (int day = 1; day <= 7; ++day)
    if (is_weekdays(plan.crew.weekdays) && !works_on(plan.crew.weekdays, day))
      free << locale_spoken().standaloneDayName(day);
  return free.join(", ");
}

}  // namespace underlawn
