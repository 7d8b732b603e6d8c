// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/family_tables.h"

#include <algorithm>
#include <array>

namespace underlawn::sheet {

namespace {

const double kRow = pt(15.5);
const double kLine = pt(12.5);  // one more of a name
const double kHeads = pt(14);
const double kBeforeNote = pt(5);
const double kBeforeAmount = pt(8);  // a column of amounts is as wide as what stands in it
const double kBetween = pt(16);      // two columns
// Shares of a comparison's width: the way, to buy, a year, saved, paid back.
constexpr std::array kShares{0.35, 0.105, 0.195, 0.18, 0.17};
constexpr double kName = 10.5, kNote = 9.5;  // points

}  // namespace

double Pairs::set_notes(QPainter* painter, const QPointF& at, double width) const {
  const QStringList words =
      noted((width - kBetween) / 2 - amounts_width()) ? QStringList{foot_} : QStringList{foot_} + notes_;
  return set_family_text(painter, at, width, words.join(" "), kNote, false, "#444444");
}

// A word on each stands behind its name, where every one has room for it; else on none.
bool Pairs::noted(double room) const {
  return std::ranges::all_of(rows_, [&](const Row& row) {
    return row.note.isEmpty() ||
           width_of(row.what, type(kName)) + kBeforeNote + width_of(row.note, type(kNote)) <= room;
  });
}

// The width of a column of amounts, the blank before it too.
double Pairs::amount_width(qsizetype column) const {
  double most = width_of(heads_[column], type(kNote));
  for (const Row& row : rows_)
    most = std::max(most, width_of(row.amounts[column], type(kName, QFont::DemiBold)));
  return most + kBeforeAmount;
}

double Pairs::amounts_width() const {
  double sum = 0;
  for (qsizetype i = 0; i < heads_.size(); ++i) sum += amount_width(i);
  return sum;
}

// Of the two rows side by side the higher.
double Pairs::row_height(std::size_t i, double width) const {
  qsizetype most = 1;
  for (const std::size_t k : {i, i + deep()})
    if (k < rows_.size())
      most = std::max(most, wrapped(rows_[k].what, type(kName), width - amounts_width()).size());
  return kRow + static_cast<double>(most - 1) * kLine;
}

double Pairs::rows_height(double width) const {
  double sum = 0;
  for (std::size_t i = 0; i < deep(); ++i) sum += row_height(i, (width - kBetween) / 2);
  return sum;
}

double Pairs::height(double width) const {
  return (heading_.isEmpty() ? 0 : family_heading()) + kHeads + rows_height(width) + pt(4) +
         set_notes(nullptr, {}, width) + kFamilyGap;
}

void Pairs::paint_row(QPainter& painter, const QRectF& at, const Row& row) const {
  const double room = at.width() - amounts_width();
  double y = at.top() + pt(12);
  if (noted(room))
    write(painter, {at.left() + width_of(row.what, type(kName)) + kBeforeNote, y}, row.note, type(kNote),
          "#444444");
  for (const QString& line : wrapped(row.what, type(kName), room)) {
    write(painter, {at.left(), y}, line, type(kName));
    y += kLine;
  }
  double x = at.left() + room;
  for (qsizetype i = 0; i < row.amounts.size(); ++i)
    write(painter, {x += amount_width(i), at.top() + pt(12)}, row.amounts[i], type(kName, QFont::DemiBold),
          kInk, Align::right);
  painter.setPen(rule(0.5, "#c9d4b8"));
  painter.drawLine(at.bottomLeft() - QPointF(0, pt(1)), at.bottomRight() - QPointF(0, pt(1)));
}

void Pairs::paint(QPainter& painter, const QRectF& room) const {
  if (!heading_.isEmpty()) paint_family_heading(painter, room, heading_);
  const double top = room.top() + (heading_.isEmpty() ? 0 : family_heading());
  const double width = (room.width() - kBetween) / 2;
  for (const double left : {room.left(), room.left() + width + kBetween}) {
    double x = left + width - amounts_width();
    for (qsizetype i = 0; i < heads_.size(); ++i)
      write(painter, {x += amount_width(i), top + pt(9.5)}, heads_[i], type(kNote), "#444444", Align::right);
  }
  double y = top + kHeads;
  for (std::size_t i = 0; i < deep(); ++i) {
    const double high = row_height(i, width);
    paint_row(painter, QRectF(room.left(), y, width, high), rows_[i]);
    if (i + deep() < rows_.size())
      paint_row(painter, QRectF(room.left() + width + kBetween, y, width, high), rows_[i + deep()]);
    y += high;
  }
  set_notes(&painter, {room.left(), y + pt(4)}, room.width());
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
  double sum = set_row(nullptr, room, head_, kNote, false);
  for (std::size_t i = 0; i < rows_.size(); ++i) sum += set_row(nullptr, room, rows_[i], kNote, i == 0);
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
  put(head_, kNote, false);
  for (std::size_t i = 0; i < rows_.size(); ++i) put(rows_[i], kNote, i == 0);
}

}  // namespace underlawn::sheet
