// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/block.h"

namespace underlawn::sheet {

double heading_height() {
  return pt(19);
}

void paint_heading(QPainter& painter, const QRectF& room, const QString& heading) {
  write(painter, room.topLeft() + QPointF(0, pt(11)), elided(heading, type(11, QFont::Bold), room.width()),
        type(11, QFont::Bold));
  painter.setPen(rule(1.4));
  painter.drawLine(room.topLeft() + QPointF(0, pt(15)), room.topRight() + QPointF(0, pt(15)));
}

namespace {

QString continued(const QString& heading) {
  return heading.endsWith("(continued)") ? heading : heading + " (continued)";
}

}  // namespace

Items::Items(QString heading, std::vector<Item> items, double points)
    : heading_(std::move(heading)), items_(std::move(items)), points_(points) {}

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

double Items::height(double width) const {
  double sum = heading_height();
  for (const Item& item : items_) sum += item_height(item, width);
  return sum;
}

void Items::paint(QPainter& painter, const QRectF& room) const {
  paint_heading(painter, room, heading_);
  const QFont plain = type(points_), bold = type(points_, QFont::Bold);
  double y = room.top() + heading_height();
  const double left = room.left() + indent(), width = room.width() - indent();
  for (const Item& item : items_) {
    write(painter, {room.left(), y + pt(points_)}, item.mark, bold);
    const auto put = [&](const QString& text, const QFont& font) {
      if (text.isEmpty()) return;
      for (const QString& line : wrapped(text, font, width)) {
        write(painter, {left, y + pt(points_)}, line, font);
        y += line_height(font);
      }
    };
    put(item.lead, bold);
    put(item.text, plain);
    y += pt(2.5);
  }
}

std::optional<std::pair<BlockPtr, BlockPtr>> Items::split(double width, double room) const {
  double used = heading_height();
  std::size_t n = 0;
  while (n < items_.size() && used + item_height(items_[n], width) <= room)
    used += item_height(items_[n++], width);
  if (n == 0 || n == items_.size()) return std::nullopt;
  const auto cut = items_.begin() + static_cast<std::ptrdiff_t>(n);
  return std::pair<BlockPtr, BlockPtr>(
      std::make_shared<Items>(heading_, std::vector<Item>(items_.begin(), cut), points_),
      std::make_shared<Items>(continued(heading_), std::vector<Item>(cut, items_.end()), points_));
}

}  // namespace underlawn::sheet
