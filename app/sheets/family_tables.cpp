// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/family_tables.h"

#include <algorithm>
#include <array>

namespace underlawn::sheet {

namespace {

const double kRow = pt(15.5);
const double kHeads = pt(13);
const double kAmount = pt(41);   // a column of amounts
const double kBetween = pt(22);  // two columns
// Shares of a comparison's width: the way, to buy, a year, saved, paid back.
constexpr std::array kShares{0.36, 0.1, 0.19, 0.175, 0.175};

}  // namespace

double Pairs::set_notes(QPainter* painter, const QPointF& at, double width) const {
  double y = 0;
  for (const QString& note : notes_)
    y += set_family_text(painter, at + QPointF(0, y), width, note, 9.5, true);
  if (y > 0) y += pt(3);
  return y + set_family_text(painter, at + QPointF(0, y), width, foot_, 9, false, "#444444");
}

double Pairs::height(double width) const {
  return (heading_.isEmpty() ? 0 : family_heading()) + kHeads + static_cast<double>(deep()) * kRow + pt(4) +
         set_notes(nullptr, {}, width) + kFamilyGap;
}

void Pairs::paint_row(QPainter& painter, const QPointF& at, double width, const Row& row) const {
  const double y = at.y() + pt(12), room = width - static_cast<double>(row.amounts.size()) * kAmount;
  const QFont small = type(8);
  const double note = row.note.isEmpty() ? 0 : width_of(row.note, small) + pt(6);
  const QFont name = fitting(row.what, room - note, {10.5, 7});
  write_fitted(painter, {at.x(), y}, row.what, room - note, {10.5, 7});
  if (note > 0)
    write(painter, {at.x() + std::min(width_of(row.what, name), room - note) + pt(5), y}, row.note, small,
          "#444444");
  for (qsizetype i = 0; i < row.amounts.size(); ++i)
    write(painter, {at.x() + room + static_cast<double>(i + 1) * kAmount, y}, row.amounts[i],
          fitting(row.amounts[i], kAmount - pt(3), {10.5, 7}, QFont::DemiBold), kInk, Align::right);
  painter.setPen(rule(0.5, "#c9d4b8"));
  painter.drawLine(QPointF(at.x(), at.y() + kRow - pt(1)), QPointF(at.x() + width, at.y() + kRow - pt(1)));
}

void Pairs::paint(QPainter& painter, const QRectF& room) const {
  if (!heading_.isEmpty()) paint_family_heading(painter, room, heading_);
  const double top = room.top() + (heading_.isEmpty() ? 0 : family_heading());
  const double width = (room.width() - kBetween) / 2;
  for (const double x : {room.left(), room.left() + width + kBetween})
    for (qsizetype i = 0; i < heads_.size(); ++i)
      write(painter, {x + width - static_cast<double>(heads_.size() - 1 - i) * kAmount, top + pt(9)},
            heads_[i], fitting(heads_[i], kAmount - pt(2), {8.5, 6.5}), "#444444", Align::right);
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const double x = room.left() + (i < deep() ? 0 : width + kBetween);
    paint_row(painter, {x, top + kHeads + static_cast<double>(i % deep()) * kRow}, width, rows_[i]);
  }
  set_notes(&painter, {room.left(), top + kHeads + static_cast<double>(deep()) * kRow + pt(4)}, room.width());
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
