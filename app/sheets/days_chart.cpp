// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/days_chart.h"

#include <QDate>
#include <QObject>
#include <algorithm>
#include <cmath>

#include "cost/crew_calendar.h"
#include "language/language.h"
#include "sheets/family_blocks.h"
#include "sheets/works_at.h"

namespace underlawn {

namespace {

void join(std::vector<DaysRow::Bar>& bars) {
  std::ranges::sort(bars, {}, &DaysRow::Bar::from);
  std::vector<DaysRow::Bar> joined;
  for (const DaysRow::Bar& bar : bars)
    if (!joined.empty() && bar.from <= joined.back().to + 1e-6)
      joined.back().to = std::max(joined.back().to, bar.to);
    else
      joined.push_back(bar);
  bars = std::move(joined);
}

}  // namespace

std::vector<DaysRow> days_rows(const Outcome& outcome) {
  std::vector<DaysRow> rows;
  if (!outcome.calendar || !outcome.order) return rows;
  const CrewCalendar& c = *outcome.calendar;
  DaysRow smaller{QObject::tr("Smaller trench"), {}, false}, test{QObject::tr("Pressure test"), {}, true};
  for (const Trench& t : outcome.layout.trenches)
    rows.push_back({QObject::tr("Trench %1").arg(t.number), {}, false});
  for (const OpenTrench& open : c.open) {
    const DigStep& step = step_of(outcome, open.step);
    const DaysRow::Bar bar{open.from / c.day_length, open.to / c.day_length};
    const auto own = std::ranges::find(outcome.layout.trenches, step.trench, &Trench::number);
    if (step.kind != DigKind::trench)
      smaller.bars.push_back(bar);
    else if (own != outcome.layout.trenches.end())
      rows[static_cast<std::size_t>(own - outcome.layout.trenches.begin())].bars.push_back(bar);
  }
  for (const CrewTask& task : c.tasks)
    if (task.station == CrewStation::testing && task.step < 0)
      test.bars.push_back({task.begin / c.day_length, task.end / c.day_length});
  for (DaysRow* last : {&smaller, &test})
    if (!last->bars.empty()) rows.push_back(*last);
  for (DaysRow& row : rows) join(row.bars);
  return rows;
}

namespace {

constexpr double kOff = 0.45;  // width of a day off, of a day's

QDate date_of(const CrewDay& day) {
  return QDate::fromString(QString::fromStdString(day.date), Qt::ISODate);
}

DaysColumn column_of(const QDate& date, bool off) {
  DaysColumn column;
  column.off = off;
  if (date.isValid()) column.date = locale_spoken().toString(date, off ? "ddd" : "ddd d").remove('.');
  return column;
}

// Their places, of a width of 1.
void set_widths(std::vector<DaysColumn>& columns) {
  const auto width = [](const DaysColumn& c) { return c.off ? kOff : 1.0; };
  double all = 0, x = 0;
  for (const DaysColumn& c : columns) all += width(c);
  for (DaysColumn& c : columns) {
    c.from = x / all;
    x += width(c);
    c.to = x / all;
  }
}

}  // namespace

std::vector<DaysColumn> days_columns(const Outcome& outcome) {
  std::vector<DaysColumn> columns;
  if (!outcome.calendar) return columns;
  const auto& days = outcome.calendar->days;
  int worked = 0, rain = 0;
  QDate before;
  for (const CrewDay& day : days) {
    const QDate date = date_of(day);
    if (before.isValid() && date.isValid())
      for (QDate off = before.addDays(1); off < date; off = off.addDays(1))
        columns.push_back(column_of(off, true));
    before = date;
    columns.push_back(column_of(date, false));
    columns.back().rain = day.reserve;
    columns.back().number = day.reserve ? QString("+%1").arg(++rain) : QString::number(++worked);
  }
  set_widths(columns);
  return columns;
}

namespace sheet {

bool days_chart_has_days_off(const Outcome& outcome) {
  return std::ranges::any_of(days_columns(outcome), &DaysColumn::off);
}

namespace {

const QColor kOpen = "#5b4029";  // as the pictures have an open trench
const QColor kDayOff = "#dcdcd8";
constexpr double kPoints = 9.5;
const double kBar = pt(8), kNumbers = pt(14), kDates = pt(12);
// From row to row; closer where there are many.
double row_height(std::size_t rows) {
  return rows > 10 ? pt(11) : pt(13);
}

class DaysChart : public Block {
 public:
  DaysChart(std::vector<DaysRow> rows, std::vector<DaysColumn> columns)
      : rows_(std::move(rows)), columns_(std::move(columns)) {
    for (std::size_t i = 0; i < columns_.size(); ++i)
      if (!columns_[i].off && !columns_[i].rain) worked_.push_back(i);
  }

  double height(double) const override {
    return heads() + row_height(rows_.size()) * static_cast<double>(rows_.size()) + kFamilyGap;
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    const double row_high = row_height(rows_.size());
    double names = 0;
    for (const DaysRow& row : rows_) names = std::max(names, width_of(row.name, type(kPoints)));
    const QRectF plot(
        QPointF(room.left() + names + pt(8), room.top() + heads()),
        QPointF(room.right(), room.top() + heads() + row_high * static_cast<double>(rows_.size())));
    paint_days(painter, plot);
    for (std::size_t i = 0; i < rows_.size(); ++i)
      paint_row(painter, room.left(), plot, rows_[i], plot.top() + row_high * static_cast<double>(i));
  }

 private:
  bool dated() const { return !columns_.empty() && !columns_.front().date.isEmpty(); }
  double heads() const { return kNumbers + (dated() ? kDates : 0); }
  // Of a moment in days worked; at the end of a day this day's end, not the next one's beginning.
  double place(double day, bool end) const;
  void paint_days(QPainter& painter, const QRectF& plot) const;
  void paint_head(QPainter& painter, const QRectF& plot, bool dates) const;
  void paint_row(QPainter& painter, double left, const QRectF& plot, const DaysRow& row, double top) const;
  std::vector<DaysRow> rows_;
  std::vector<DaysColumn> columns_;
  std::vector<std::size_t> worked_;  // places of the days worked
};

double DaysChart::place(double day, bool end) const {
  const double whole = end ? std::ceil(day - 1e-6) - 1 : std::floor(day + 1e-6);
  const auto last = static_cast<double>(worked_.size()) - 1;
  const double which = std::clamp(whole, 0.0, std::max(0.0, last));
  const DaysColumn& c = columns_[worked_[static_cast<std::size_t>(which)]];
  return c.from + std::clamp(day - which, 0.0, 1.0) * (c.to - c.from);
}

// Over the columns, as many as have room: every second, third.
void DaysChart::paint_head(QPainter& painter, const QRectF& plot, bool dates) const {
  const QFont font = type(kPoints);
  const auto text = [dates](const DaysColumn& c) { return dates ? c.date : c.number; };
  double free = plot.left();
  for (const DaysColumn& c : columns_) {
    const double x = plot.left() + (c.from + c.to) / 2 * plot.width(), wide = width_of(text(c), font);
    const bool own = !c.off || wide < (c.to - c.from) * plot.width();
    if (text(c).isEmpty() || !own || x - wide / 2 < free) continue;
    write(painter, {x, plot.top() - pt(4) - (dates || !dated() ? 0 : kDates)}, text(c), font, kFaint,
          Align::centre);
    free = x + wide / 2 + pt(2);
  }
}

// Days worked are tinted, with a line where each ends; those off are gray, those kept for rain white.
void DaysChart::paint_days(QPainter& painter, const QRectF& plot) const {
  const auto room_of = [&plot](const DaysColumn& c) {
    return QRectF(QPointF(plot.left() + c.from * plot.width(), plot.top()),
                  QPointF(plot.left() + c.to * plot.width(), plot.bottom()));
  };
  for (const DaysColumn& c : columns_)
    if (!c.rain) painter.fillRect(room_of(c), c.off ? kDayOff : kFamilyTint);
  for (const DaysColumn& c : columns_) {
    const QRectF day = room_of(c);
    painter.setPen(rule(0.6, c.rain ? QColor("#dfe5d5") : QColor(Qt::white)));
    painter.drawLine(day.topRight(), day.bottomRight());
  }
  paint_head(painter, plot, false);
  if (dated()) paint_head(painter, plot, true);
}

// What is open stays open on days off; a test is only on days worked.
void DaysChart::paint_row(QPainter& painter, double left, const QRectF& plot, const DaysRow& row,
                          double top) const {
  write(painter, {left, top + row_height(rows_.size()) / 2 + pt(3.4)}, row.name, type(kPoints));
  painter.setPen(Qt::NoPen);
  const auto draw = [&](double from, double to, const QBrush& brush) {
    painter.setBrush(brush);
    painter.drawRoundedRect(
        QRectF(plot.left() + from * plot.width(), top + (row_height(rows_.size()) - kBar) / 2,
               (to - from) * plot.width(), kBar),
        pt(1.5), pt(1.5));
  };
  for (const DaysRow::Bar& bar : row.bars) {
    if (!row.test) {
      draw(place(bar.from, false), place(bar.to, true), kOpen);
      continue;
    }
    for (double day = std::floor(bar.from + 1e-6); day < bar.to - 1e-6; day += 1)
      draw(place(std::max(day, bar.from), false), place(std::min(day + 1, bar.to), true), kFamilyGreen);
  }
  painter.setBrush(Qt::NoBrush);
}

}  // namespace

BlockPtr days_chart(const Outcome& outcome) {
  std::vector<DaysRow> rows = days_rows(outcome);
  std::vector<DaysColumn> columns = days_columns(outcome);
  if (rows.empty() || columns.empty()) return nullptr;
  return std::make_shared<DaysChart>(std::move(rows), std::move(columns));
}

}  // namespace sheet
}  // namespace underlawn
