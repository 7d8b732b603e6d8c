// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/block.h"

namespace underlawn::sheet {

double heading_height() {
  return pt(19);
}

void paint_heading(QPainter& painter, const QRectF& room, const QString& heading) {
  write_fitted(painter, room.topLeft() + QPointF(0, pt(11)), heading, room.width(), {11, 8}, QFont::Bold);
  painter.setPen(rule(1.4));
  painter.drawLine(room.topLeft() + QPointF(0, pt(15)), room.topRight() + QPointF(0, pt(15)));
}

QString heading_of(const QString& heading, bool continued) {
  return continued ? QObject::tr("%1 (continued)").arg(heading) : heading;
}

Items::Items(QString heading, std::vector<Item> items, double points, int columns)
    : heading_(std::move(heading)), items_(std::move(items)), points_(points), columns_(columns) {}

double Items::indent() const {
  double widest = 0;
  for (const Item& item : items_) widest = std::max(widest, width_of(item.mark, type(points_, QFont::Bold)));
  return widest > 0 ? widest + pt(5) : 0;
}

double Items::item_height(const Item& item, double width) const {
  const double room = width - indent();
  double lines = 0;
  if (!item.lead.isEmpty())
    lines += static_cast<double>(wrapped(item.lead, type(points_, QFont::Bold), room).size());
  if (!item.text.isEmpty()) lines += static_cast<double>(wrapped(item.text, type(points_), room).size());
  return lines * line_height(type(points_)) + pt(2.5);
}

double Items::column_width(double width) const {
  return columns_ == 1 ? width : (width - pt(20)) / 2;
}

double Items::heights(std::size_t from, std::size_t to, double width) const {
  double sum = 0;
  for (std::size_t i = from; i < to; ++i) sum += item_height(items_[i], width);
  return sum;
}

// Where the second column begins, so that the higher of the two is as low as can be.
std::size_t Items::first_of_second(double width) const {
  if (columns_ == 1) return items_.size();
  std::size_t best = items_.size();
  double least = heights(0, best, width);
  for (std::size_t n = 1; n < items_.size(); ++n) {
    const double higher = std::max(heights(0, n, width), heights(n, items_.size(), width));
    if (higher >= least) continue;
    least = higher;
    best = n;
  }
  return best;
}

double Items::height(double width) const {
  const double w = column_width(width);
  const std::size_t second = first_of_second(w);
  return heading_height() + std::max(heights(0, second, w), heights(second, items_.size(), w));
}

void Items::paint(QPainter& painter, const QRectF& room) const {
  paint_heading(painter, room, heading_of(heading_, continued_));
  const double w = column_width(room.width());
  const std::size_t second = first_of_second(w);
  const double top = room.top() + heading_height();
  paint_items(painter, {room.left(), top}, w, 0, second);
  paint_items(painter, {room.right() - w, top}, w, second, items_.size());
}

void Items::paint_items(QPainter& painter, QPointF at, double width, std::size_t from, std::size_t to) const {
  const QFont plain = type(points_), bold = type(points_, QFont::Bold);
  double y = at.y();
  const double left = at.x() + indent(), room = width - indent();
  const auto put = [&](const QString& text, const QFont& font) {
    if (text.isEmpty()) return;
    for (const QString& line : wrapped(text, font, room)) {
      write(painter, {left, y + pt(points_)}, line, font);
      y += line_height(font);
    }
  };
  for (std::size_t i = from; i < to; ++i) {
    write(painter, {at.x(), y + pt(points_)}, items_[i].mark, bold);
    put(items_[i].lead, bold);
    put(items_[i].text, plain);
    y += pt(2.5);
  }
}

std::optional<std::pair<BlockPtr, BlockPtr>> Items::split(double width, double room) const {
  if (columns_ != 1) return std::nullopt;
  double used = heading_height();
  std::size_t n = 0;
  while (n < items_.size() && used + item_height(items_[n], width) <= room)
    used += item_height(items_[n++], width);
  if (n == 0 || n == items_.size()) return std::nullopt;
  const auto cut = items_.begin() + static_cast<std::ptrdiff_t>(n);
  auto first = std::make_shared<Items>(heading_, std::vector<Item>(items_.begin(), cut), points_);
  auto rest = std::make_shared<Items>(heading_, std::vector<Item>(cut, items_.end()), points_);
  first->continued_ = continued_;
  rest->continued_ = true;
  return std::pair<BlockPtr, BlockPtr>(std::move(first), std::move(rest));
}

}  // namespace underlawn::sheet
