// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/crew_bars.h"

#include <QFontMetricsF>
#include <QObject>
#include <QPainter>
#include <cmath>

#include "canvas/hatch.h"
#include "cost/crew_shop.h"
#include "dig/cut_once.h"
#include "dig/dig_words.h"

namespace underlawn {

namespace {

const QColor kStakes = "#e4e2dc";
constexpr double kStakeTime = 600;  // s a stake, two tapes and a check: common practice, no source

QString tr(const char* text) {
  return QObject::tr(text);
}

// Measures in normal lines, by the height of a line of text.
struct Frame {
  double row, head, axis, gap, names;  // heights; width of the names

  explicit Frame(const CrewBarsStyle& s) {
    const QFontMetricsF m(s.font);
    row = 1.35 * m.height();
    head = 1.5 * m.height();
    axis = 1.2 * m.height();
    gap = 0.6 * m.height();
    names = m.horizontalAdvance(tr("Excavator") + " 2") + 8 * s.unit;
  }
  double height(std::size_t rows) const { return head + row * static_cast<double>(rows) + axis + gap; }
};

struct Placed {
  QRectF box;
  std::size_t task;
  QRectF by_hand;  // that part of it in which lines are laid bare
};

double across(const QRectF& plot, double t, double day_length) {
  return plot.left() + plot.width() * std::clamp(t / day_length, 0.0, 1.0);
}

// s from the day's first hour to where the step's lines are laid bare.
double exposed_at(const CrewTask& task, const CrewCalendar& c, int day, const HandWork& hand) {
  const auto step = static_cast<std::size_t>(task.step);
  const bool some = task.station == CrewStation::digging && task.step >= 0 && step < hand.exposing.size();
  return some ? task.begin + hand.exposing[step] - day * c.day_length : 0;
}

// The bars of a day's rows, in a plot whose top is that of its first row.
std::vector<Placed> place_bars(const CrewDayBars& day, const CrewCalendar& c, const QRectF& plot, double row,
                               const HandWork& hand) {
  std::vector<Placed> all;
  for (std::size_t r = 0; r < day.rows.size(); ++r)
    for (const CrewBar& bar : day.rows[r].bars) {
      const double left = across(plot, bar.from, c.day_length), right = across(plot, bar.to, c.day_length);
      const QRectF box(left, plot.top() + row * (static_cast<double>(r) + 0.12), std::max(1.0, right - left),
                       0.76 * row);
      QRectF by_hand = box;
      by_hand.setRight(std::clamp(across(plot, exposed_at(c.tasks[bar.task], c, day.day, hand), c.day_length),
                                  box.left(), box.right()));
      all.push_back({box, bar.task, by_hand});
    }
  return all;
}

bool drawn(const CrewDayBars& day, const CrewBarsStyle& style) {
  return day.day >= style.from_day && day.day < style.to_day;
}

bool staked(const CrewBarsStyle& style) {
  return style.from_day == 0 && style.hand.staking > 0;
}

// The block of the staking, if there is one, stands over the days.
template <class Visit>
void each_day(const CrewCalendar& c, const QRectF& area, const CrewBarsStyle& style, Visit visit) {
  const Frame f(style);
  double y = area.top() + (staked(style) ? f.height(1) : 0);
  for (const CrewDayBars& day : bars_by_day(c)) {
    if (!drawn(day, style)) continue;
    const QRectF plot(area.left() + f.names, y + f.head, area.width() - f.names - 2 * style.unit,
                      f.row * static_cast<double>(day.rows.size()));
    visit(day, plot, f);
    y += f.height(day.rows.size());
  }
}

QString clock(const CrewCalendar& c, double t) {
  const int minutes = static_cast<int>(std::lround((c.begins + t) / 60)) % (24 * 60);
  return QString("%1:%2").arg(minutes / 60).arg(minutes % 60, 2, 10, QChar('0'));
}

void paint_hours(QPainter& p, const CrewCalendar& c, const QRectF& plot, const Frame& f,
                 const CrewBarsStyle& s) {
  const QFontMetricsF m(s.font);
  const int hours = static_cast<int>(std::floor(c.day_length / 3600 + 1e-9));
  const double one = plot.width() * 3600 / c.day_length;
  const bool whole = m.horizontalAdvance("10:00 ") <= one;  // else the hour alone, at every line
  double taken = -1e9;                                      // by the text before
  for (int h = 0; h <= hours; ++h) {
    const double x = across(plot, h * 3600.0, c.day_length);
    p.setPen(QPen(s.rule, 0.6 * s.unit));
    p.drawLine(QPointF(x, plot.top()), QPointF(x, plot.bottom()));
    p.setPen(s.faint);
    const QString clocked = clock(c, h * 3600.0);
    const QString text = whole ? clocked : clocked.section(':', 0, 0);
    const double w = m.horizontalAdvance(text);
    const double left = std::min(x - w / 2, plot.right() + s.unit - w);
    if (left < taken + s.unit) continue;
    p.drawText(QPointF(left, plot.bottom() + 0.9 * f.axis), text);
    taken = left + w;
  }
}

// "header 2", as the order of digging numbers what is dug in parts.
QString part_named(const QString& name, int part) {
  return part > 0 ? name + " " + QString::number(part) : name;
}

QString bar_text(const CrewTask& task, const DigOrder& order) {
  if (task.station == CrewStation::joining) return tr("joints");
  if (task.station == CrewStation::testing && task.step < 0) return tr("fill, flush, test");
  const DigStep& step = order.steps[static_cast<std::size_t>(task.step)];
  const QString name = step.kind == DigKind::trench   ? QString::number(step.trench)
                       : step.kind == DigKind::header ? part_named(tr("header"), step.part)
                                                      : part_named(tr("run"), step.part);
  if (task.station == CrewStation::testing) return tr("coil %1").arg(name);
  return task.bedding ? tr("sand %1").arg(name) : name;
}

// Room beside a bar, for the number of a sliver: to the next bar of its row or the end of the day.
struct Free {
  double left = 0, right = 0;
};
Free free_beside(const std::vector<Placed>& bars, const Placed& bar, const QRectF& plot) {
  double before = plot.left(), next = plot.right();
  for (const Placed& other : bars) {
    if (std::abs(other.box.top() - bar.box.top()) > 0.5 * bar.box.height()) continue;
    if (other.box.left() > bar.box.left()) next = std::min(next, other.box.left());
    if (other.box.left() < bar.box.left()) before = std::max(before, other.box.right());
  }
  return {bar.box.left() - before, next - bar.box.right()};
}

// No hatching behind a word in the middle of a bar.
void paint_clear(QPainter& p, const QRectF& box, double wide, const QColor& fill) {
  QRectF behind(0, 0, wide + 0.3 * box.height(), 0.9 * box.height());
  behind.moveCenter(box.center());
  p.fillRect(behind.intersected(box), fill);
}

void paint_bar(QPainter& p, const Placed& bar, const CrewTask& task, const DigOrder& order,
               const CrewBarsStyle& s, const Free& free) {
  p.setPen(QPen(s.bar_text, 0.6 * s.unit));
  p.setBrush(s.fill[static_cast<std::size_t>(task.station)]);
  p.drawRect(bar.box);
  if (bar.by_hand.width() > 0)
    p.drawLines(hatch_lines({QPolygonF(bar.by_hand)}, {2.6 * s.unit, 45, bar.box.topLeft()}, bar.by_hand));
  // In the bar, beside it, and then the same in less type; a sliver has its step's number at last.
  QFont font = s.font;
  const QString whole = bar_text(task, order);
  const QString step = task.step >= 0 ? QString::fromStdString(step_numeral(task.step + 1)) : QString();
  for (const auto& [text, size] :
       {std::pair(whole, 1.0), std::pair(whole, 0.8), std::pair(whole, 0.65), std::pair(step, 0.65)}) {
    if (text.isEmpty()) continue;
    if (s.font.pixelSize() > 0)
      font.setPixelSize(std::max(1, static_cast<int>(size * s.font.pixelSize())));
    else
      font.setPointSizeF(size * s.font.pointSizeF());
    p.setFont(font);
    const QFontMetricsF m(font);
    const double wide = m.horizontalAdvance(text), y = bar.box.center().y() + 0.35 * m.ascent();
    if (wide <= bar.box.width() - 2 * s.unit) {
      if (bar.by_hand.width() > 0)
        paint_clear(p, bar.box, wide, s.fill[static_cast<std::size_t>(task.station)]);
      p.setPen(s.bar_text);
      p.drawText(bar.box, Qt::AlignCenter, text);
      break;
    }
    if (text == step) continue;  // beside a bar it would be read as the next one's
    const bool right = wide <= free.right - 3 * s.unit;
    if (!right && wide > free.left - 3 * s.unit) continue;
    p.setPen(s.text);  // that of the bars may be the ground's own
    p.drawText(QPointF(right ? bar.box.right() + 2 * s.unit : bar.box.left() - 2 * s.unit - wide, y), text);
    break;
  }
  p.setFont(s.font);
}

// The stakes as one bar of a day before the first.
void paint_staking(QPainter& p, const CrewCalendar& c, const QRectF& area, const CrewBarsStyle& s) {
  const Frame f(s);
  const QRectF plot(area.left() + f.names, area.top() + f.head, area.width() - f.names - 2 * s.unit, f.row);
  QFont bold = s.font;
  bold.setWeight(QFont::DemiBold);
  p.setFont(bold);
  p.setPen(s.text);
  p.drawText(QPointF(area.left(), plot.top() - 0.35 * f.head), tr("Before day 1"));
  p.setFont(s.font);
  paint_hours(p, c, plot, f, s);
  p.setPen(s.text);
  p.drawText(QRectF(area.left(), plot.top(), f.names, f.row), Qt::AlignLeft | Qt::AlignVCenter,
             tr("Staking"));
  const QRectF bar(plot.left(), plot.top() + 0.12 * f.row,
                   across(plot, s.hand.staking, c.day_length) - plot.left(), 0.76 * f.row);
  p.setPen(QPen(s.bar_text, 0.6 * s.unit));
  p.setBrush(kStakes);
  p.drawRect(bar);
  const QString text = tr("%1 stakes").arg(s.hand.stakes);
  const bool inside = QFontMetricsF(s.font).horizontalAdvance(text) <= bar.width() - 2 * s.unit;
  p.setPen(inside ? s.bar_text : s.text);
  p.drawText(inside ? bar : bar.translated(bar.width() + 3 * s.unit, 0).adjusted(0, 0, plot.width(), 0),
             (inside ? Qt::AlignCenter : Qt::AlignLeft | Qt::AlignVCenter), text);
}

QString hand_name(const CrewCalendar& c, const CrewRow& row) {
  const QString name = station_words(row.station);
  const bool several = c.stations[static_cast<std::size_t>(row.station)].hands > 1;
  return several ? name + " " + QString::number(row.who) : name;
}

QString hours_said(double time) {
  const double h = std::round(time / 360) / 10;
  return h < 1 ? tr("%1 min").arg(std::lround(time / 60)) : tr("%1 h").arg(h);
}

QString what_said(const CrewTask& task, const DigOrder& order) {
  if (task.station == CrewStation::joining) return tr("Header and run laid, joints fused");
  if (task.station == CrewStation::testing && task.step < 0)
    return tr("Loop filled, flushed and pressure-tested");
  const DigStep& step = order.steps[static_cast<std::size_t>(task.step)];
  const QString name = step.kind == DigKind::trench   ? tr("trench %1").arg(step.trench)
                       : step.kind == DigKind::header ? tr("header")
                                                      : tr("supply run");
  switch (task.station) {
    case CrewStation::digging:
      return tr("Digging %1").arg(name);
    case CrewStation::making:
      return tr("Making the coil of %1").arg(name);
    case CrewStation::laying:
      return tr("Laying the coil of %1").arg(name);
    case CrewStation::testing:
      return tr("Coil of %1 alone filled and held under pressure").arg(name);
    case CrewStation::hauling:
      return tr("Spoil of %1 trucked").arg(name);
    default:
      if (!task.bedding) return tr("Filling in %1").arg(name);
      return (run_comes_over(step.work) ? tr("Sand over the coil of %1, earth to the run's floor")
                                        : tr("Sand over the coil of %1"))
          .arg(name);
  }
}

QString wait_said(WaitFor w) {
  switch (w) {
    case WaitFor::trench:
      return tr("Waited %1 for the trench to be dug.");
    case WaitFor::coil:
      return tr("Waited %1 for the coil to be made.");
    case WaitFor::laying:
      return tr("Waited %1 for the coil before to be laid and bedded.");
    case WaitFor::filling:
      return tr("Waited %1 for the trench before to be filled in.");
    case WaitFor::last_trench:
      return tr("Waited %1 for the last trench and its coil.");
    case WaitFor::joints:
      return tr("Waited %1 for the joints.");
    case WaitFor::test:
      return tr("Waited %1 for the test.");
    case WaitFor::morning:
      return tr("Waited %1 for the next morning, so that the test is not left overnight.");
    case WaitFor::trucks:
      return tr("Waited %1 for the trucks.");
    case WaitFor::proving:
      return tr("Waited %1 for the coil to be held under pressure.");
    case WaitFor::nothing:
      break;
  }
  return tr("Waited %1.");
}

QString weekday_words(int weekday) {
  static const char* const kNames[] = {QT_TR_NOOP("Monday"),   QT_TR_NOOP("Tuesday"), QT_TR_NOOP("Wednesday"),
                                       QT_TR_NOOP("Thursday"), QT_TR_NOOP("Friday"),  QT_TR_NOOP("Saturday"),
                                       QT_TR_NOOP("Sunday")};
  return weekday < 1 || weekday > 7 ? QString() : tr(kNames[weekday - 1]);
}

QString moment(const CrewCalendar& c, double t, bool end) {
  const int day = std::max(0, static_cast<int>(std::floor((t + (end ? -1e-3 : 1e-3)) / c.day_length)));
  return tr("day %1, %2").arg(day + 1).arg(clock(c, t - day * c.day_length));
}

}  // namespace

HandWork hand_work(const Plan& plan, const Outcome& outcome) {
  HandWork hand;
  hand.stakes = static_cast<int>(outcome.stake_out.ties.size());
  hand.staking = hand.stakes * kStakeTime;
  if (outcome.order != nullptr)
    for (const DigStep& step : outcome.order->steps)
      hand.exposing.push_back(hand_time(step, plan.site, outcome.layout, plan.crew));
  return hand;
}

CrewBarsStyle CrewBarsStyle::on_paper(const QFont& font, double unit) {
  return {font,
          Qt::black,
          "#444444",
          "#b5b5b5",
          "#1c1c1c",
          {QColor("#dcb98f"), QColor("#b9dcee"), QColor("#86b7d4"), QColor("#ecd06f"), QColor("#cdbfe6"),
           QColor("#c6d3a6"), QColor("#e3bfb3")},
          unit};
}

QString station_words(CrewStation station) {
  switch (station) {
    case CrewStation::digging:
      return tr("Excavator");
    case CrewStation::making:
      return tr("Coil rack");
    case CrewStation::laying:
      return tr("Layers");
    case CrewStation::joining:
      return tr("Joiner");
    case CrewStation::testing:
      return tr("Tester");
    case CrewStation::filling:
      return tr("Loader");
    case CrewStation::hauling:
      return tr("Truck");
  }
  return {};
}

QString day_words(const CrewCalendar& calendar, int day) {
  const auto d = static_cast<std::size_t>(day);
  if (d >= calendar.days.size() || calendar.days[d].date.empty()) return tr("Day %1").arg(day + 1);
  return tr("Day %1, %2 %3")
      .arg(day + 1)
      .arg(weekday_words(calendar.days[d].weekday), QString::fromStdString(calendar.days[d].date));
}

QString task_said(const CrewTask& task, const CrewCalendar& calendar, const DigOrder& order) {
  QString said =
      tr("%1: %2, %3 to %4 (%5).")
          .arg(station_words(task.station), what_said(task, order), moment(calendar, task.begin, false),
               moment(calendar, task.end, true), hours_said(task.end - task.begin));
  if (task.waited > 60) said += " " + wait_said(task.waited_for).arg(hours_said(task.waited));
  return said;
}

std::vector<CrewDayBars> bars_by_day(const CrewCalendar& c) {
  std::vector<CrewDayBars> days;
  for (int day = 0; day < c.days_worked; ++day) {
    CrewDayBars bars{day, {}};
    const double from = day * c.day_length, to = from + c.day_length;
    for (std::size_t i = 0; i < c.tasks.size(); ++i) {
      const CrewTask& t = c.tasks[i];
      if (t.end - from < 1e-3 || to - t.begin < 1e-3 || t.end - t.begin < 1e-3) continue;
      if (bars.rows.empty() || bars.rows.back().station != t.station || bars.rows.back().who != t.who)
        bars.rows.push_back({t.station, t.who, {}});
      bars.rows.back().bars.push_back({i, std::max(t.begin, from) - from, std::min(t.end, to) - from});
    }
    days.push_back(std::move(bars));
  }
  return days;
}

double crew_bars_height(const CrewCalendar& calendar, const CrewBarsStyle& style) {
  const Frame f(style);
  double height = staked(style) ? f.height(1) : 0;
  for (const CrewDayBars& day : bars_by_day(calendar))
    if (drawn(day, style)) height += f.height(day.rows.size());
  return height;
}

void paint_crew_bars(QPainter& painter, const CrewCalendar& calendar, const DigOrder& order,
                     const QRectF& area, const CrewBarsStyle& style, int chosen, const QColor& ring) {
  QFont bold = style.font;
  bold.setWeight(QFont::DemiBold);
  if (staked(style)) paint_staking(painter, calendar, area, style);
  each_day(calendar, area, style, [&](const CrewDayBars& day, const QRectF& plot, const Frame& f) {
    painter.setFont(bold);
    painter.setPen(style.text);
    painter.drawText(QPointF(area.left(), plot.top() - 0.35 * f.head), day_words(calendar, day.day));
    painter.setFont(style.font);
    paint_hours(painter, calendar, plot, f, style);
    for (std::size_t r = 0; r < day.rows.size(); ++r) {
      painter.setPen(style.text);
      painter.drawText(QRectF(area.left(), plot.top() + f.row * static_cast<double>(r), f.names, f.row),
                       Qt::AlignLeft | Qt::AlignVCenter, hand_name(calendar, day.rows[r]));
    }
    const std::vector<Placed> bars = place_bars(day, calendar, plot, f.row, style.hand);
    for (const Placed& bar : bars) {
      paint_bar(painter, bar, calendar.tasks[bar.task], order, style, free_beside(bars, bar, plot));
      if (static_cast<int>(bar.task) != chosen) continue;
      painter.setBrush(Qt::NoBrush);
      painter.setPen(QPen(ring, 2.4 * style.unit));
      painter.drawRect(bar.box);
    }
  });
}

int task_at(const CrewCalendar& calendar, const QRectF& area, const CrewBarsStyle& style, QPointF place) {
  int found = -1;
  each_day(calendar, area, style, [&](const CrewDayBars& day, const QRectF& plot, const Frame& f) {
    for (const Placed& bar : place_bars(day, calendar, plot, f.row, style.hand))
      if (bar.box.contains(place)) found = static_cast<int>(bar.task);
  });
  return found;
}

}  // namespace underlawn
