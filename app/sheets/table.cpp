// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "sheets/block.h"

namespace underlawn::sheet {

namespace {

constexpr double kGap = 7;  // pt between columns
const double kSwatch = pt(16);

// From the left of a cell to where its text is anchored.
double shift_of(Align align, double room) {
  return align == Align::right ? room : align == Align::centre ? room / 2 : 0;
}

}  // namespace

Table::Table(QString heading, std::vector<Column> columns, std::vector<std::vector<Cell>> rows, double points,
             QString note)
    : heading_(std::move(heading)),
      columns_(std::move(columns)),
      rows_(std::move(rows)),
      points_(points),
      note_(std::move(note)) {}

QFont Table::head_font() const {
  return type(points_ * 0.85, QFont::DemiBold);
}

QFont Table::cell_font(const Cell& cell) const {
  return type(points_, cell.bold ? QFont::Bold : QFont::Normal);
}

std::vector<double> Table::natural() const {
  std::vector<double> all;
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    double widest = 0;
    for (const QString& word : columns_[c].head.split(' '))
      widest = std::max(widest, width_of(word, head_font()));
    for (const auto& row : rows_)
      widest = std::max(widest, width_of(row[c].text, cell_font(row[c])) + (row[c].swatch ? kSwatch : 0));
    all.push_back(widest + pt(kGap));
  }
  return all;
}

// As wide as their texts; what is spare goes to all alike, what is missing comes from columns that wrap.
std::vector<double> Table::widths(double width) const {
  std::vector<double> natural = this->natural();
  double sum = 0, yielding = 0;
  for (std::size_t c = 0; c < natural.size(); ++c) {
    sum += natural[c];
    if (columns_[c].wraps) yielding += natural[c];
  }
  if (sum > width && yielding > 0) {
    for (std::size_t c = 0; c < natural.size(); ++c)
      if (columns_[c].wraps)
        natural[c] = std::max(pt(40), natural[c] - (sum - width) * natural[c] / yielding);
  } else if (sum < width) {
    const double spare = (width - sum) / static_cast<double>(natural.size());
    for (double& w : natural) w += spare;
  }
  return natural;
}

double Table::natural_width() const {
  double sum = 0;
  for (double w : natural()) sum += w;
  return sum;
}

double Table::row_height(const std::vector<Cell>& row, const std::vector<double>& w) const {
  qsizetype lines = 1;
  for (std::size_t c = 0; c < row.size(); ++c)
    if (columns_[c].wraps)
      lines = std::max(
          lines, wrapped(row[c].text, cell_font(row[c]), w[c] - pt(kGap) + 1 - (row[c].swatch ? kSwatch : 0))
                     .size());
  return static_cast<double>(lines) * line_height(type(points_)) + pt(2.6);
}

double Table::head_height(const std::vector<double>& w) const {
  qsizetype lines = 1;
  const QFont font = head_font();
  if (std::all_of(columns_.begin(), columns_.end(), [](const Column& c) { return c.head.isEmpty(); }))
    return 0;
  for (std::size_t c = 0; c < columns_.size(); ++c)
    lines = std::max(lines, wrapped(columns_[c].head, font, w[c] - pt(kGap) + 1).size());
  return static_cast<double>(lines) * line_height(font) + pt(3);
}

double Table::height(double width) const {
  const std::vector<double> w = widths(width);
  double sum = heading_height() + head_height(w);
  for (const auto& row : rows_) sum += row_height(row, w);
  if (!note_.isEmpty())
    sum += static_cast<double>(wrapped(note_, type(9), width).size()) * line_height(type(9)) + pt(3);
  return sum;
}

void Table::paint_head(QPainter& painter, QPointF at, const std::vector<double>& w) const {
  const QFont font = head_font();
  double x = at.x();
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    double y = at.y() + pt(points_ * 0.85);
    for (const QString& line : wrapped(columns_[c].head, font, w[c] - pt(kGap) + 1)) {
      const double shift = shift_of(columns_[c].align, w[c] - pt(kGap));
      write(painter, {x + shift, y}, line, font, kFaint, columns_[c].align);
      y += line_height(font);
    }
    x += w[c];
  }
}

void Table::paint_row(QPainter& painter, QPointF at, const std::vector<Cell>& row,
                      const std::vector<double>& w) const {
  double x = at.x();
  for (std::size_t c = 0; c < row.size(); ++c) {
    const QFont font = cell_font(row[c]);
    double left = x;
    if (row[c].swatch) {
      painter.fillRect(QRectF(left, at.y() + pt(2.2), kSwatch - pt(5), pt(points_ * 0.8)), *row[c].swatch);
      left += kSwatch;
    }
    const double room = w[c] - pt(kGap) + 1 - (row[c].swatch ? kSwatch : 0);
    const QStringList lines = columns_[c].wraps ? wrapped(row[c].text, font, room) : QStringList{row[c].text};
    double y = at.y() + pt(points_) + pt(0.8);
    for (const QString& line : lines) {
      const double shift = shift_of(columns_[c].align, room - 1);
      write(painter, {left + shift, y}, line, font, kInk, columns_[c].align);
      y += line_height(font);
    }
    x += w[c];
  }
}

void Table::paint(QPainter& painter, const QRectF& room) const {
  paint_heading(painter, room, heading_);
  const std::vector<double> w = widths(room.width());
  double y = room.top() + heading_height();
  paint_head(painter, {room.left(), y}, w);
  y += head_height(w);
  for (const auto& row : rows_) {
    painter.setPen(rule(0.4, kRule));
    painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y));
    paint_row(painter, {room.left(), y}, row, w);
    y += row_height(row, w);
  }
  painter.setPen(rule(0.4, kRule));
  painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y));
  if (note_.isEmpty()) return;
  y += pt(3);
  for (const QString& line : wrapped(note_, type(9), room.width())) {
    write(painter, {room.left(), y + pt(9)}, line, type(9), kFaint);
    y += line_height(type(9));
  }
}

std::optional<std::pair<BlockPtr, BlockPtr>> Table::split(double width, double room) const {
  const std::vector<double> w = widths(width);
  double used = heading_height() + head_height(w);
  std::size_t n = 0;
  while (n < rows_.size() && used + row_height(rows_[n], w) <= room) used += row_height(rows_[n++], w);
  // All rows but not the note: the last row goes along with it.
  if (n == rows_.size() && height(width) > room) --n;
  // A table that begins with one row at a page's foot reads badly.
  if (n < 2 || n >= rows_.size()) return std::nullopt;
  const auto cut = rows_.begin() + static_cast<std::ptrdiff_t>(n);
  auto first = std::make_shared<Table>(heading_, columns_, std::vector<std::vector<Cell>>(rows_.begin(), cut),
                                       points_);
  auto rest = std::make_shared<Table>(heading_, columns_, std::vector<std::vector<Cell>>(cut, rows_.end()),
                                      points_, note_);
  first->continued_ = continued_;
  rest->continued_ = true;
  return std::pair<BlockPtr, BlockPtr>(std::move(first), std::move(rest));
}

}  // namespace underlawn::sheet
