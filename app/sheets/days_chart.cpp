// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/days_chart.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "cost/crew_calendar.h"
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

namespace sheet {

namespace {

const QColor kOpen = "#5b4029";  // as the pictures have an open trench
constexpr double kPoints = 9.5;
const double kBar = pt(8), kDays = pt(14);
// From row to row; closer where there are many.
double row_height(std::size_t rows) {
  return rows > 10 ? pt(12) : pt(13);
}

class DaysChart : public Block {
 public:
  DaysChart(std::vector<DaysRow> rows, int days, int rain)
      : rows_(std::move(rows)), days_(days), rain_(rain) {}

  double height(double) const override {
    return kDays + row_height(rows_.size()) * static_cast<double>(rows_.size()) + kFamilyGap;
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    const double row_high = row_height(rows_.size());
    double names = 0;
    for (const DaysRow& row : rows_) names = std::max(names, width_of(row.name, type(kPoints)));
    const QRectF plot(
        QPointF(room.left() + names + pt(8), room.top() + kDays),
        QPointF(room.right(), room.top() + kDays + row_high * static_cast<double>(rows_.size())));
    paint_days(painter, plot);
    for (std::size_t i = 0; i < rows_.size(); ++i)
      paint_row(painter, room.left(), plot, rows_[i], plot.top() + row_high * static_cast<double>(i));
  }

 private:
  double day_width(const QRectF& plot) const { return plot.width() / (days_ + rain_); }
  void paint_days(QPainter& painter, const QRectF& plot) const;
  void paint_row(QPainter& painter, double left, const QRectF& plot, const DaysRow& row, double top) const;
  std::vector<DaysRow> rows_;
  int days_, rain_;
};

// A line where each day ends, its number over it; those kept for rain are pale and have a plus.
void DaysChart::paint_days(QPainter& painter, const QRectF& plot) const {
  const double day = day_width(plot);
  const QFont font = type(kPoints);
  const int step = static_cast<int>(std::ceil((width_of("+00", font) + pt(2)) / day));
  painter.fillRect(QRectF(plot.topLeft(), QSizeF(days_ * day, plot.height())), kFamilyTint);
  for (int d = 0; d < days_ + rain_; ++d) {
    const double x = plot.left() + d * day;
    painter.setPen(rule(0.6, d < days_ ? QColor(Qt::white) : QColor("#dfe5d5")));
    painter.drawLine(QPointF(x + day, plot.top()), QPointF(x + day, plot.bottom()));
    if (d >= days_ ? (d - days_) % step != 0 : d % step != 0) continue;
    const QString number = d < days_ ? QString::number(d + 1) : QString("+%1").arg(d + 1 - days_);
    write(painter, {x + day / 2, plot.top() - pt(4)}, number, font, kFaint, Align::centre);
  }
}

void DaysChart::paint_row(QPainter& painter, double left, const QRectF& plot, const DaysRow& row,
                          double top) const {
  write(painter, {left, top + row_height(rows_.size()) / 2 + pt(3.4)}, row.name, type(kPoints));
  painter.setPen(Qt::NoPen);
  painter.setBrush(row.test ? kFamilyGreen : kOpen);
  for (const DaysRow::Bar& bar : row.bars)
    painter.drawRoundedRect(
        QRectF(plot.left() + bar.from * day_width(plot), top + (row_height(rows_.size()) - kBar) / 2,
               (bar.to - bar.from) * day_width(plot), kBar),
        pt(1.5), pt(1.5));
  painter.setBrush(Qt::NoBrush);
}

}  // namespace

BlockPtr days_chart(const Outcome& outcome) {
  std::vector<DaysRow> rows = days_rows(outcome);
  if (rows.empty()) return nullptr;
  const auto& days = outcome.calendar->days;
  const auto rain = static_cast<int>(std::ranges::count(days, true, &CrewDay::reserve));
  return std::make_shared<DaysChart>(std::move(rows), std::max(1, outcome.calendar->days_worked), rain);
}

}  // namespace sheet
}  // namespace underlawn
