// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <numeric>

#include "sheets/block.h"

namespace underlawn::sheet {

namespace {

constexpr double kGap = 7;  // pt between columns
const double kSwatch = pt(16);
const double kWide = pt(560);     // of a table on letter paper
constexpr int kLongestWord = 24;  // letters; what is longer is no word, and may be torn

// From the left of a cell to where its text is anchored.
double shift_of(Align align, double room) {
  return align == Align::right ? room : align == Align::centre ? room / 2 : 0;
}

double sum_of(const std::vector<double>& all) {
  return std::accumulate(all.begin(), all.end(), 0.0);
}

double longest_word(const QString& text, const QFont& font) {
  double most = 0;
  for (const QString& word : text.simplified().split(' '))
    most = std::max(most, width_of(word.left(kLongestWord), font));
  return most;
}

}  // namespace

Table::Table(QString heading, std::vector<Column> columns, std::vector<std::vector<Cell>> rows, double points,
             QString note)
    : heading_(std::move(heading)),
      columns_(std::move(columns)),
      rows_(std::move(rows)),
      points_(points),
      note_(std::move(note)) {
  measure();
}

QFont Table::head_font() const {
  return type(points_ * 0.85, QFont::DemiBold);
}

QFont Table::cell_font(const Cell& cell) const {
  return type(points_, cell.bold ? QFont::Bold : QFont::Normal);
}

double Table::widest(std::size_t c, bool whole) const {
  double most = 0;
  const auto meet = [&](const QString& text, const QFont& font, double before) {
    most = std::max(most, before + (whole ? width_of(text, font) : longest_word(text, font)));
  };
  for (const auto& row : rows_) meet(row[c].text, cell_font(row[c]), row[c].swatch ? kSwatch : 0);
  return std::max(most, longest_word(columns_[c].head, head_font())) + pt(kGap);
}

void Table::measure() {
  natural_.clear();
  least_.clear();
  square_.clear();
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    natural_.push_back(widest(c, true));
    least_.push_back(columns_[c].wraps ? widest(c, false) : natural_.back());
    square_.push_back(0);
    for (const auto& row : rows_) square_.back() += std::pow(width_of(row[c].text, cell_font(row[c])), 2);
  }
}

std::shared_ptr<const Block> Table::for_pages(QSizeF room) const {
  constexpr double kSmallest = 8;
  if (!on_a_page_) return nullptr;
  auto smaller = std::make_shared<Table>(*this);
  while (smaller->height(room.width()) > room.height()) {
    smaller->points_ -= 0.25;
    if (smaller->points_ < kSmallest) return nullptr;
    smaller->measure();
  }
  return smaller;
}

std::shared_ptr<const Table> Table::in_type(double points) const {
  auto other = std::make_shared<Table>(*this);
  other->points_ = points;
  other->measure();
  return other;
}

// The same in smaller type, where its words are too wide for the room.
std::optional<Table> Table::smaller_for(double width) const {
  constexpr double kSmallest = 7;
  if (points_ <= kSmallest || sum_of(least_) <= width) return std::nullopt;
  Table smaller = *this;
  smaller.points_ = std::max(kSmallest, points_ - 0.5);
  smaller.measure();
  return smaller;
}

// As wide as their texts; what is spare goes to all alike, what is missing comes from columns that wrap, each
// kept as wide as its longest word. Among these a column that has n times the text gets the cube root of n
// times the width: so the squares of all heights are least together.
std::vector<double> Table::widths(double width) const {
  const double sum = sum_of(natural_), least = sum_of(least_);
  if (sum > width && sum > least) return width > least ? shared(width) : least_;
  std::vector<double> all = natural_;
  // On a wide page the rows are kept short enough for the eye to follow them.
  const double wide = std::min(width, std::max(kWide, 1.6 * sum));
  for (double& w : all) w += std::max(0.0, wide - sum) / static_cast<double>(all.size());
  return all;
}

// For a width between least and natural: the share is found by halving.
std::vector<double> Table::shared(double width) const {
  const auto at = [&](double share) {
    std::vector<double> all = natural_;
    for (std::size_t c = 0; c < all.size(); ++c)
      if (columns_[c].wraps) all[c] = std::clamp(share * std::cbrt(square_[c]), least_[c], natural_[c]);
    return all;
  };
  double low = 0, high = width;
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    (sum_of(at(middle)) > width ? high : low) = middle;
  }
  return at(low);
}

double Table::natural_width() const {
  return sum_of(natural_);
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
  if (const auto smaller = smaller_for(width)) return smaller->height(width);
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
  if (const auto smaller = smaller_for(room.width())) return smaller->paint(painter, room);
  paint_heading(painter, room, heading_of(heading_, continued_));
  const std::vector<double> w = widths(room.width());
  const double right = room.left() + std::min(room.width(), sum_of(w));
  double y = room.top() + heading_height();
  paint_head(painter, {room.left(), y}, w);
  y += head_height(w);
  for (const auto& row : rows_) {
    painter.setPen(rule(0.4, kRule));
    painter.drawLine(QPointF(room.left(), y), QPointF(right, y));
    paint_row(painter, {room.left(), y}, row, w);
    y += row_height(row, w);
  }
  painter.setPen(rule(0.4, kRule));
  painter.drawLine(QPointF(room.left(), y), QPointF(right, y));
  if (note_.isEmpty()) return;
  y += pt(3);
  for (const QString& line : wrapped(note_, type(9), room.width())) {
    write(painter, {room.left(), y + pt(9)}, line, type(9), kFaint);
    y += line_height(type(9));
  }
}

std::optional<std::pair<BlockPtr, BlockPtr>> Table::split(double width, double room) const {
  if (const auto smaller = smaller_for(width)) return smaller->split(width, room);
  const std::vector<double> w = widths(width);
  double used = heading_height() + head_height(w);
  std::size_t n = 0;
  while (n < rows_.size() && used + row_height(rows_[n], w) <= room) used += row_height(rows_[n++], w);
  // All rows but not the note: the last row goes along with it.
  if (n == rows_.size() && height(width) > room) --n;
  // A last row alone at the head of a page reads badly, and so does a first one at its foot.
  if (n < rows_.size() && rows_.size() > 6) n = std::min(n, rows_.size() - 3);
  if (n < 2 || n >= rows_.size()) return std::nullopt;
  const auto cut = rows_.begin() + static_cast<std::ptrdiff_t>(n);
  auto first = std::make_shared<Table>(heading_, columns_, std::vector<std::vector<Cell>>(rows_.begin(), cut),
                                       points_);
  auto rest = std::make_shared<Table>(heading_, columns_, std::vector<std::vector<Cell>>(cut, rows_.end()),
                                      points_, note_);
  first->continued_ = continued_;
  rest->continued_ = true;
  // Its columns stand alike on all pages.
  for (const auto& part : {first, rest}) {
    part->natural_ = natural_;
    part->least_ = least_;
    part->square_ = square_;
  }
  return std::pair<BlockPtr, BlockPtr>(std::move(first), std::move(rest));
}

}  // namespace underlawn::sheet
