// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/labels.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "canvas/halo.h"
#include "canvas/look.h"

namespace underlawn {

namespace {

constexpr double kBlocked = 1000;  // cost of lying on another label
constexpr double kDearer = 0.12;   // with each place, so that the first of equals is taken
constexpr double kOverLabel = 30;  // a line across another label
constexpr int kWays = 16;          // directions that are tried

QSizeF label_size(const Label& label) {
  const QSizeF text = text_size(label.text, label.font);
  const double em = label.font.pixelSize();
  if (label.tag == TagShape::gap) return {text.width() + 0.5 * em, 1.25 * em};
  if (label.tag == TagShape::none) return {text.width() + 0.3 * em, text.height() + 0.1 * em};
  const double side =
      std::max(text.width() + 0.7 * em, 1.65 * em) * (label.tag == TagShape::diamond ? 1.25 : 1);
  return label.tag == TagShape::square ? QSizeF(std::max(text.width() + 0.6 * em, 1.4 * em), 1.4 * em)
                                       : QSizeF(side, side);
}

QPolygonF outline(const Label& label, QPointF centre) {
  QTransform turn;
  turn.translate(centre.x(), centre.y());
  turn.rotate(label.angle);
  const QSizeF size = label.size;
  return turn.map(QPolygonF(QRectF(-size.width() / 2, -size.height() / 2, size.width(), size.height())));
}

struct Corners {
  const QPointF* first;
  int count;
};

Corners corners(const QPolygonF& shape) {
  return {shape.constData(), static_cast<int>(shape.size())};
}

std::pair<double, double> span_along(Corners shape, QPointF axis) {
  double low = INFINITY, high = -INFINITY;
  for (int i = 0; i < shape.count; ++i) {
    const double d = QPointF::dotProduct(shape.first[i], axis);
    low = std::min(low, d);
    high = std::max(high, d);
  }
  return {low, high};
}

bool parted_by_sides_of(Corners shape, Corners a, Corners b) {
  for (int i = 0; i < shape.count; ++i) {
    const QPointF side = shape.first[(i + 1) % shape.count] - shape.first[i];
    if (side.isNull()) continue;
    const QPointF axis(-side.y(), side.x());
    const auto [a_low, a_high] = span_along(a, axis);
    const auto [b_low, b_high] = span_along(b, axis);
    if (a_high <= b_low || b_high <= a_low) return true;
  }
  return false;
}

// Two convex shapes overlap unless a side of either parts them.
bool overlap(Corners a, Corners b) {
  return !parted_by_sides_of(a, a, b) && !parted_by_sides_of(b, a, b);
}

bool overlap(const QPolygonF& a, const QPolygonF& b) {
  return a.boundingRect().intersects(b.boundingRect()) && overlap(corners(a), corners(b));
}

// As it would be of a line's own polygon.
QRectF bounds_of(const QLineF& line) {
  const double left = std::min(line.x1(), line.x2()), top = std::min(line.y1(), line.y2());
  return {left, top, std::max(line.x1(), line.x2()) - left, std::max(line.y1(), line.y2()) - top};
}

void paint_tag(QPainter& painter, const Label& label, QPointF centre, double line) {
  const QSizeF size = label.size;
  const QRectF box(centre.x() - size.width() / 2, centre.y() - size.height() / 2, size.width(),
                   size.height());
  painter.setPen(label.tag == TagShape::gap ? QPen(Qt::NoPen) : QPen(label.tag_line, 1.2 * line));
  painter.setBrush(label.tag_fill);
  if (label.tag == TagShape::round || label.tag == TagShape::gap) painter.drawEllipse(box);
  if (label.tag == TagShape::square) painter.drawRect(box);
  if (label.tag == TagShape::diamond)
    painter.drawPolygon(QPolygonF({{centre.x(), box.top()},
                                   {box.right(), centre.y()},
                                   {centre.x(), box.bottom()},
                                   {box.left(), centre.y()}}));
}

// What it stands for, or the first of its places that is in sight.
QPointF seen_place(const Label& label, const QRectF& room) {
  if (!label.anchor.isNull()) return label.anchor;
  for (const QPointF& place : label.places)
    if (room.contains(place)) return place;
  return label.places.front();
}

double gap_between(const QRectF& a, const QRectF& b) {
  const double across = std::max({0.0, a.left() - b.right(), b.left() - a.right()});
  const double up = std::max({0.0, a.top() - b.bottom(), b.top() - a.bottom()});
  return std::hypot(across, up);
}

// Whether the place lies in the outline, or so near to it that it is one of its corners.
bool belongs_to(const QPolygonF& area, QPointF place, double near) {
  if (area.containsPoint(place, Qt::OddEvenFill)) return true;
  for (int i = 0; i < area.size(); ++i) {
    const QPointF a = area[i], side = area[(i + 1) % area.size()] - a, to = place - a;
    const double square = QPointF::dotProduct(side, side);
    const double t = square > 0 ? std::clamp(QPointF::dotProduct(to, side) / square, 0.0, 1.0) : 0;
    if (QLineF(a + t * side, place).length() < near) return true;
  }
  return false;
}

// From the edge of the label towards the thing.
void paint_leader(QPainter& painter, const Label& label, QPointF centre, double line) {
  const QLineF leader(label.anchor, centre);
  if (!label.leader) return;
  QPointF stop = centre;
  const QPolygonF box = outline(label, centre);
  for (int i = 0; i + 1 < box.size(); ++i) {
    QPointF hit;
    if (leader.intersects(QLineF(box[i], box[i + 1]), &hit) == QLineF::BoundedIntersection &&
        QLineF(label.anchor, hit).length() < QLineF(label.anchor, stop).length())
      stop = hit;
  }
  const double off = label.thing.isNull() ? QLineF(label.anchor, stop).length()
                                          : gap_between(box.boundingRect(), label.thing);
  if (off <= label.leader_from) return;
  painter.setPen(QPen(label.colour, 0.6 * line));
  painter.drawLine(QLineF(label.anchor, stop));
}

}  // namespace

QSizeF text_size(const QString& text, const QFont& font) {
  const QFontMetricsF metrics(set_for(font, text));
  return {metrics.horizontalAdvance(text), metrics.ascent() + metrics.descent()};
}

void paint_text(QPainter& painter, const QString& text, const QFont& usual, const QColor& colour,
                const QColor& halo, QPointF centre, double angle, double halo_width) {
  const QFont font = set_for(usual, text);
  const QFontMetricsF metrics(font);
  const double width = metrics.horizontalAdvance(text);
  const QPointF base(-width / 2, metrics.capHeight() / 2);
  painter.save();
  painter.translate(centre);
  painter.rotate(angle);
  if (halo_width > 0) paint_halo(painter, {text, font, base, halo, halo_width});
  painter.setPen(colour);
  painter.setFont(font);
  painter.drawText(base, text);
  painter.restore();
}

QVector<QPointF> places_around(QPointF middle, QSizeF reach, const QString& text, const QFont& font,
                               int rings) {
  const QSizeF size = text_size(text, font);
  QVector<QPointF> places;
  for (int ring = 0; ring < rings; ++ring) {
    const double gap = (0.35 + 1.3 * ring) * font.pixelSize();
    const double dx = reach.width() + gap + size.width() / 2, dy = reach.height() + gap + size.height() / 2;
    const double near_x = reach.width() + gap * 0.7 + size.width() / 2;
    for (QPointF d : {QPointF(dx, 0), QPointF(0, -dy), QPointF(0, dy), QPointF(-dx, 0), QPointF(near_x, -dy),
                      QPointF(near_x, dy), QPointF(-near_x, -dy), QPointF(-near_x, dy)})
      places.push_back(middle + d);
  }
  return places;
}

void Labels::add(Label label) {
  if (label.text.isEmpty() || label.places.isEmpty()) return;
  label.size = label_size(label);
  labels_.push_back(std::move(label));
}

void Labels::avoid(const QPolygonF& line, bool closed) {
  const int sides = static_cast<int>(line.size()) - (closed ? 0 : 1);
  if (closed) areas_.push_back(line);
  if (sides > 2000) return;  // placing would take longer than drawing
  for (int i = 0; i < sides; ++i) avoided_.push_back({line[i], line[(i + 1) % line.size()]});
}

double Labels::cost(const Label& label, QPointF centre, const QRectF& room, double enough) const {
  const QPolygonF box = outline(label, centre);
  const QRectF bounds = box.boundingRect();
  if (!room.contains(bounds)) return 2 * kBlocked;
  double sum = 0;
  for (const QPolygonF& other : taken_) {
    if (overlap(box, other)) sum += kBlocked;
    if (sum >= enough) return sum;
  }
  for (const QLineF& line : avoided_) {
    if (!bounds.intersects(bounds_of(line))) continue;
    const QPointF ends[] = {line.p1(), line.p2()};
    if (overlap(corners(box), {ends, 2})) sum += 1;
  }
  // A name within another thing's outline would be read as that thing's.
  if (label.leader)
    for (const QPolygonF& area : areas_)
      if (area.containsPoint(centre, Qt::OddEvenFill) &&
          !belongs_to(area, label.anchor, 0.3 * label.font.pixelSize()))
        sum += 25;
  if (label.tag != TagShape::none && label.leader)
    for (const QPolygonF& other : taken_)
      if (!other.containsPoint(label.anchor, Qt::OddEvenFill) &&
          overlap(other, QPolygonF({label.anchor, centre})))
        sum += kOverLabel;
  return sum;
}

bool Labels::place(const Label& label, const QRectF& room, QPointF& centre) const {
  double best = INFINITY;
  for (int i = 0; i < label.places.size() && best > kDearer * i; ++i) {
    const double now = cost(label, label.places[i], room, best) + kDearer * i;
    if (!(now < best)) continue;
    best = now;
    centre = label.places[i];
  }
  return best < kBlocked;
}

// Round what is meant, ever farther out; lines under it and from it count.
std::optional<Label> Labels::aside(const Label& label, const QRectF& room) const {
  Label moved = label;
  if (moved.anchor.isNull()) moved.anchor = seen_place(label, room);
  moved.leader = true;
  moved.leader_from = 0;
  moved.angle = 0;
  const QSizeF half = moved.size / 2;
  const double em = label.font.pixelSize();
  for (double ring = 0.6; ring < 12; ring += 0.6) {
    double best = kBlocked;
    for (int i = 0; i < kWays; ++i) {
      const double turn = 2 * M_PI * i / kWays;
      const QPointF centre = moved.anchor + QPointF((ring * em + half.width()) * std::cos(turn),
                                                    (ring * em + half.height()) * std::sin(turn));
      double now = cost(moved, centre, room, best);
      if (!(now < best)) continue;
      for (const QPolygonF& other : taken_)
        if (overlap(other, QPolygonF({moved.anchor, centre}))) now += kOverLabel;
      if (!(now < best)) continue;
      best = now;
      moved.places = {centre};
    }
    if (best < kBlocked) return moved;
  }
  return std::nullopt;
}

void Labels::paint_one(QPainter& painter, const Label& label, QPointF centre, const QColor& halo,
                       double line) {
  taken_.push_back(outline(label, centre));
  paint_leader(painter, label, centre, line);
  if (label.tag != TagShape::none) paint_tag(painter, label, centre, line);
  paint_text(painter, label.text, label.font, label.colour, halo, centre, label.angle,
             label.tag == TagShape::none ? 0.16 * label.font.pixelSize() : 0);
}

void Labels::paint(QPainter& painter, const QRectF& room, const QColor& halo, double line) {
  std::stable_sort(labels_.begin(), labels_.end(),
                   [](const Label& a, const Label& b) { return a.rank < b.rank; });
  for (const Label& label : labels_) {
    QPointF centre;
    const bool free = place(label, room, centre);
    // What is wholly out of sight needs no name.
    if (!free && (!label.must || !room.contains(seen_place(label, room)))) continue;
    const auto moved = free ? std::nullopt : aside(label, room);
    if (moved)
      paint_one(painter, *moved, moved->places.front(), halo, line);
    else
      paint_one(painter, label, centre, halo, line);
  }
  labels_.clear();
}

}  // namespace underlawn
