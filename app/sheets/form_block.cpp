// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/form_block.h"

#include <algorithm>

namespace underlawn::sheet {

namespace {

constexpr double kPoints = 9.5;
constexpr double kHandPoints = 10.5;  // what was read
const double kPad = pt(4);
const double kLeastRow = pt(19);  // room to write in by hand
const double kNotePoints = 8;

QFont plain() {
  return type(kPoints);
}
QFont hand() {
  return type(kHandPoints, QFont::DemiBold);
}

double lines_height(const QString& text, const QFont& font, double width) {
  return static_cast<double>(wrapped(text, font, width).size()) * line_height(font);
}

void write_lines(QPainter& painter, QPointF at, const QString& text, const QFont& font, double width,
                 double points) {
  double y = at.y() + pt(points);
  for (const QString& line : wrapped(text, font, width)) {
    write(painter, {at.x(), y}, line, font);
    y += line_height(font);
  }
}

}  // namespace

FormBlock::FormBlock(QString heading, QString asked, QStringList boxes, std::vector<FormRow> rows,
                     QString note)
    : heading_(std::move(heading)),
      asked_(std::move(asked)),
      boxes_(std::move(boxes)),
      rows_(std::move(rows)),
      note_(std::move(note)) {}

FormBlock::Widths FormBlock::widths(double width) const {
  const bool any = std::ranges::any_of(rows_, [](const FormRow& r) { return !r.asked.isEmpty(); });
  const double many = static_cast<double>(std::max<qsizetype>(boxes_.size(), 1));
  const auto widest = [&](QString FormRow::*text, double least, double most) {
    double wide = least * width;
    for (const FormRow& r : rows_) wide = std::max(wide, width_of(r.*text, plain()) + 2 * kPad);
    return std::min(wide, most * width);
  };
  const double what = widest(&FormRow::what, 0.14, many > 2 ? 0.26 : 0.30);
  const double asked = any ? widest(&FormRow::asked, 0.16, many > 2 ? 0.28 : 0.36) : 0;
  return {what, asked, (width - what - asked) / many};
}

double FormBlock::row_height(const FormRow& row, const Widths& w) const {
  double most = kLeastRow;
  most = std::max(most, lines_height(row.what, plain(), w.what - kPad) + kPad);
  if (w.asked > 0) most = std::max(most, lines_height(row.asked, plain(), w.asked - kPad) + kPad);
  for (const QString& box : row.boxes)
    most = std::max(most, lines_height(box, hand(), w.box - 2 * kPad) + kPad);
  return most;
}

double FormBlock::head_height() const {
  return asked_.isEmpty() && boxes_.join("").isEmpty() ? 0 : line_height(plain()) + pt(2);
}

double FormBlock::note_height(double width) const {
  return note_.isEmpty() ? 0 : lines_height(note_, type(kNotePoints), width) + pt(4);
}

double FormBlock::height(double width) const {
  double sum = heading_height() + head_height() + note_height(width);
  const Widths w = widths(width);
  for (const FormRow& row : rows_) sum += row_height(row, w);
  return sum;
}

void FormBlock::paint_row(QPainter& painter, QPointF at, double height, const FormRow& row,
                          const Widths& w) const {
  write_lines(painter, {at.x(), at.y() + pt(2)}, row.what, plain(), w.what - kPad, kPoints);
  if (w.asked > 0)
    write_lines(painter, {at.x() + w.what, at.y() + pt(2)}, row.asked, plain(), w.asked - kPad, kPoints);
  painter.setPen(rule(0.7));
  painter.setBrush(Qt::NoBrush);
  for (qsizetype i = 0; i < std::max<qsizetype>(boxes_.size(), 1); ++i) {
    const QRectF box(at.x() + w.what + w.asked + static_cast<double>(i) * w.box, at.y(), w.box, height);
    painter.setPen(rule(0.7));
    painter.drawRect(box);
    if (i < row.boxes.size())
      write_lines(painter, {box.left() + kPad, box.top() + pt(2)}, row.boxes[i], hand(), w.box - 2 * kPad,
                  kHandPoints);
  }
}

void FormBlock::paint(QPainter& painter, const QRectF& room) const {
  paint_heading(painter, room, heading_);
  const Widths w = widths(room.width());
  double y = room.top() + heading_height();
  if (head_height() > 0) {
    const QFont font = type(8.5, QFont::DemiBold);
    write(painter, {room.left() + w.what, y + pt(8.5)}, asked_, font, kFaint);
    for (qsizetype i = 0; i < boxes_.size(); ++i)
      write(painter, {room.left() + w.what + w.asked + static_cast<double>(i) * w.box + kPad, y + pt(8.5)},
            boxes_[i], font, kFaint);
    y += head_height();
  }
  for (const FormRow& row : rows_) {
    const double h = row_height(row, w);
    paint_row(painter, {room.left(), y}, h, row, w);
    y += h;
  }
  if (!note_.isEmpty())
    write_lines(painter, {room.left(), y + pt(3)}, note_, type(kNotePoints), room.width(), kNotePoints);
}

std::optional<std::pair<BlockPtr, BlockPtr>> FormBlock::split(double width, double room) const {
  const Widths w = widths(width);
  double used = heading_height() + head_height();
  std::size_t fit = 0;
  while (fit < rows_.size() && used + row_height(rows_[fit], w) <= room) used += row_height(rows_[fit++], w);
  if (fit == 0 || fit == rows_.size()) return std::nullopt;
  const auto at = rows_.begin() + static_cast<std::ptrdiff_t>(fit);
  return std::pair{
      BlockPtr(
          std::make_shared<FormBlock>(heading_, asked_, boxes_, std::vector<FormRow>(rows_.begin(), at))),
      BlockPtr(std::make_shared<FormBlock>(QObject::tr("%1, CONTINUED").arg(heading_), asked_, boxes_,
                                           std::vector<FormRow>(at, rows_.end()), note_))};
}

}  // namespace underlawn::sheet
