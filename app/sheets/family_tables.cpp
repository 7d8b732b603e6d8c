// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/family_tables.h"

#include <algorithm>
#include <array>

namespace underlawn::sheet {

namespace {

const double kRow = pt(17.5);
const double kBetween = pt(22);  // two columns
// Shares of a comparison's width: the way, to buy, a year, saved, paid back.
constexpr std::array kShares{0.25, 0.21, 0.19, 0.175, 0.175};

}  // namespace

double Pairs::height(double width) const {
  return (heading_.isEmpty() ? 0 : family_heading()) + static_cast<double>(deep()) * kRow + pt(4) +
         set_family_text(nullptr, {}, width, foot_, 9, false) + kFamilyGap;
}

void Pairs::paint(QPainter& painter, const QRectF& room) const {
  if (!heading_.isEmpty()) paint_family_heading(painter, room, heading_);
  const double top = room.top() + (heading_.isEmpty() ? 0 : family_heading());
  const double width = (room.width() - kBetween) / 2;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const double x = room.left() + (i < deep() ? 0 : width + kBetween);
    const double y = top + static_cast<double>(i % deep()) * kRow;
    const QFont bold = type(10.5, QFont::DemiBold), small = type(8.5);
    const double amount = width_of(rows_[i].amount, bold) + pt(8), note = width_of(rows_[i].note, small);
    write_fitted(painter, {x, y + pt(12)}, rows_[i].what, width - amount - note - pt(8), {10.5, 7});
    write(painter, {x + width - amount, y + pt(12)}, rows_[i].note, small, "#555555", Align::right);
    write(painter, {x + width, y + pt(12)}, rows_[i].amount, bold, kInk, Align::right);
    painter.setPen(rule(0.5, "#c9d4b8"));
    painter.drawLine(QPointF(x, y + kRow - pt(1)), QPointF(x + width, y + kRow - pt(1)));
  }
  set_family_text(&painter, {room.left(), top + static_cast<double>(deep()) * kRow + pt(4)}, room.width(),
                  foot_, 9, false, "#555555");
}

double Compared::cell_width(std::size_t column, double width) const {
  return kShares[std::min(column, kShares.size() - 1)] * width;
}

double Compared::set_row(QPainter* painter, const QRectF& room, const Row& row, double points,
                         bool bold) const {
  const QFont font = type(points, bold ? QFont::DemiBold : QFont::Normal);
  double high = 0, x = room.left();
  for (std::size_t i = 0; i < row.size(); ++i) {
    const double width = cell_width(i, room.width());
    double y = room.top();
    for (const QString& line : wrapped(row[i], font, width - pt(8))) {
      const QPointF at(i == 0 ? x : x + width, y + pt(points + 1));
      if (painter != nullptr) write(*painter, at, line, font, kInk, i == 0 ? Align::left : Align::right);
      y += pt(1.3 * points);
    }
    high = std::max(high, y - room.top());
    x += width;
  }
  return high + pt(6);
}

double Compared::height(double width) const {
  const QRectF room(0, 0, width, 0);
  double sum = set_row(nullptr, room, head_, 9, false);
  for (std::size_t i = 0; i < rows_.size(); ++i) sum += set_row(nullptr, room, rows_[i], 9.5, i == 0);
  return sum + kFamilyGap;
}

void Compared::paint(QPainter& painter, const QRectF& room) const {
  double y = room.top();
  const auto put = [&](const Row& row, double points, bool bold) {
    const QRectF at(room.left(), y, room.width(), 0);
    const double high = set_row(nullptr, at, row, points, bold);
    if (bold)
      painter.fillRect(QRectF(room.left() - pt(4), y - pt(1), room.width() + pt(8), high), kFamilyTint);
    set_row(&painter, at, row, points, bold);
    y += high;
    painter.setPen(rule(0.5, "#c9d4b8"));
    painter.drawLine(QPointF(room.left(), y - pt(1.5)), QPointF(room.right(), y - pt(1.5)));
  };
  put(head_, 9, false);
  for (std::size_t i = 0; i < rows_.size(); ++i) put(rows_[i], 9.5, i == 0);
}

}  // namespace underlawn::sheet
