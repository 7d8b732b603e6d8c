// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/lot_names.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "canvas/labels.h"
#include "canvas/look.h"
#include "plane/region.h"
#include "plane/strip.h"
#include "sheets/family_facts.h"
#include "sheets/sheet_type.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

const QColor kText = "#2b2a26";
const QColor kHalo = "#f4f6ea";
constexpr double kFrame = 2.4;       // of the letters' height: the strip that paint_lot_picture keeps
constexpr double kMargin = 1.2;      // likewise: round the lot (lot_picture_view)
constexpr double kGap = 0.9;         // likewise, from the lot to a name beside it
constexpr double kLine = 1.25;       // from line to line
constexpr double kWidest = 0.23;     // of the picture's width that a column takes
constexpr std::size_t kRounds = 60;  // of moving names from side to side

struct Thing {
  QString name;
  QPolygonF outline;
  QPointF heart;      // deep inside
  double in_way = 0;  // what it costs to lead a line across it
  bool named = true;
};

QFont face(double text) {
  return plan_font(text);
}

bool meet(const QLineF& line, const QPolygonF& outline) {
  for (qsizetype i = 0; i < outline.size(); ++i)
    if (line.intersects(QLineF(outline[i], outline[(i + 1) % outline.size()]), nullptr) ==
        QLineF::BoundedIntersection)
      return true;
  return outline.containsPoint(line.p1(), Qt::OddEvenFill);
}

bool meet(const QRectF& box, const QPolygonF& outline) {
  const std::array corners{box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft()};
  for (std::size_t i = 0; i < corners.size(); ++i)
    if (meet(QLineF(corners[i], corners[(i + 1) % 4]), outline)) return true;
  return std::ranges::any_of(outline, [&](const QPointF& p) { return box.contains(p); });
}

bool holds(const QPolygonF& outline, const QRectF& box) {
  const std::array corners{box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft()};
  for (std::size_t i = 0; i < corners.size(); ++i) {
    if (!outline.containsPoint(corners[i], Qt::OddEvenFill)) return false;
    const QLineF side(corners[i], corners[(i + 1) % 4]);
    for (qsizetype k = 0; k < outline.size(); ++k)
      if (side.intersects(QLineF(outline[k], outline[(k + 1) % outline.size()]), nullptr) ==
          QLineF::BoundedIntersection)
        return false;
  }
  return true;
}

// Of a grid over it the point farthest from its edge.
QPointF heart_of(const QPolygonF& outline) {
  const QRectF box = outline.boundingRect();
  QPointF best = box.center();
  double most = -1;
  for (int i = 1; i < 16; ++i)
    for (int k = 1; k < 16; ++k) {
      const QPointF p = box.topLeft() + QPointF(i * box.width() / 16, k * box.height() / 16);
      if (!outline.containsPoint(p, Qt::OddEvenFill)) continue;
      double least = 1e9;
      for (qsizetype e = 0; e < outline.size(); ++e) {
        const QPointF a = outline[e], b = outline[(e + 1) % outline.size()];
        least = std::min(least, distance(Segment{{a.x(), a.y()}, {b.x(), b.y()}}, Point{p.x(), p.y()}));
      }
      // A trace nearer to the middle wins among equals.
      least -= 1e-3 * QLineF(p, box.center()).length();
      if (least > most) most = least, best = p;
    }
  return best;
}

QPolygonF round_at(QPointF middle, double r) {
  QPolygonF all;
  for (int i = 0; i < 24; ++i) all << middle + r * QPointF(std::cos(i * M_PI / 12), std::sin(i * M_PI / 12));
  return all;
}

class Names {
 public:
  Names(const Plan& plan, const Outcome* outcome, QSizeF size, const LotPicture& how)
      : plan_(plan),
        outcome_(outcome),
        how_(how),
        size_(size.width(), size.height() - (how.frame ? kFrame * how.text : 0)) {
    if (!how.names) {
      take(0, 0);
      return;
    }
    // Seen with the widest columns first: what stands beside the lot and on which side. Then each column is
    // as wide as its widest name.
    const double most = kWidest * size.width();
    take(most, most);
    set_beside();
    const double left = widest(true), right = widest(false);
    const std::map<QString, bool> sides = sides_by_name();
    take(left, right);
    for (const NamePlace& name : beside_) left_.push_back(sides.at(name.name));
    cost();  // puts them there
  }

  double left_column() const { return left_column_; }
  double right_column() const { return right_column_; }
  double lot_height() const { return lot_.height(); }
  std::vector<NamePlace> take_all() {
    std::vector<NamePlace> all = std::move(inside_);
    all.insert(all.end(), beside_.begin(), beside_.end());
    return all;
  }
  struct Number {
    QString text;
    QRectF box;
  };
  const std::vector<Number>& numbers() const { return numbers_; }
  QPointF at(Point p) const { return view_.to_device(p) + QPointF(left_column_, 0); }

 private:
  QPolygonF polygon(const std::vector<Point>& points) const {
    QPolygonF all;
    for (const Point p : points) all << at(p);
    return all;
  }
  // Grass again shows no trench, unless the loop is to be seen below it.
  bool shows_work() const {
    return outcome_ != nullptr && how_.moment != LotMoment::before &&
           (how_.moment != LotMoment::after || how_.loop_below);
  }
  void take(double left, double right);
  double widest(bool left) const {
    double most = 0;
    for (std::size_t i = 0; i < beside_.size(); ++i)
      if (left_[i] == left) most = std::max(most, beside_[i].box.width());
    return most;
  }
  std::map<QString, bool> sides_by_name() const {
    std::map<QString, bool> sides;
    for (std::size_t i = 0; i < beside_.size(); ++i) sides[beside_[i].name] = left_[i];
    return sides;
  }
  void take_thing(const Feature& f);
  void take_numbers();
  bool stands_inside(const Thing& thing);
  NamePlace name_of(const Thing& thing) const;
  void set_beside();
  void stack(std::vector<std::size_t> side, bool left);
  double cost();
  QPointF end_at(const Thing& thing, QPointF from) const;

  const Plan& plan_;
  const Outcome* outcome_;
  const LotPicture& how_;
  QSizeF size_;
  double left_column_ = 0, right_column_ = 0;
  View view_;
  QRectF lot_;
  std::vector<Thing> things_;
  std::vector<QPolygonF> bands_;  // of the loop
  std::vector<Number> numbers_;
  std::vector<NamePlace> inside_, beside_;
  std::vector<const Thing*> meant_;  // by the names beside
  std::vector<bool> left_;           // of them
};

void Names::take(double left, double right) {
  left_column_ = left;
  right_column_ = right;
  const QSizeF size(size_.width() - left - right, size_.height());
  view_ = lot_picture_view(plan_, size, how_.text);
  left_.clear();
  things_.clear();
  bands_.clear();
  inside_.clear();
  beside_.clear();
  meant_.clear();
  const Ring ring = lot_ring(plan_.site);
  for (const Feature& f : plan_.site.features) take_thing(f);
  lot_ = ring.size() > 2 ? polygon(ring).boundingRect() : QRectF(QPointF(left, 0), size);
  if (shows_work())
    for (const Trench& t : outcome_->layout.trenches)
      bands_.push_back(polygon(strip_along(middle_line(t), t.width)));
  take_numbers();
  if (!how_.names) return;
  for (const Thing& thing : things_)
    if (thing.named && !stands_inside(thing)) {
      beside_.push_back(name_of(thing));
      meant_.push_back(&thing);
    }
}

void Names::take_thing(const Feature& f) {
  Thing one;
  one.name = QString::fromStdString(display_name(f));
  switch (f.kind) {
    case FeatureKind::tree:
      if (f.points.empty()) return;
      // As paint_lot_picture draws its crown.
      one.outline =
          round_at(at(f.points[0]),
                   std::max(view_.to_device(0.55 * root_zone_radius(plan_.site, f)), 0.7 * how_.text));
      one.in_way = 6;
      break;
    case FeatureKind::well:
      if (f.points.empty()) return;
      one.outline = round_at(at(f.points[0]), 0.42 * how_.text);
      one.in_way = 4;
      break;
    case FeatureKind::house:
      one.in_way = 30;
      break;
    case FeatureKind::no_dig:
    case FeatureKind::septic_tank:
    case FeatureKind::drain_field:
    case FeatureKind::reserve_field:
      one.in_way = 2;
      break;
    case FeatureKind::drive:
      one.named = false;
      break;
    default:
      return;
  }
  if (one.outline.isEmpty()) {
    if (f.points.size() < 3) return;
    one.outline = polygon(f.points);
  }
  one.heart = heart_of(one.outline);
  things_.push_back(std::move(one));
}

// Beyond each trench's end; every second, third .. where they would stand on one another.
void Names::take_numbers() {
  numbers_.clear();
  if (!how_.numbers || !shows_work()) return;
  const auto& trenches = outcome_->layout.trenches;
  for (std::size_t step = 1; step <= trenches.size(); ++step) {
    numbers_.clear();
    bool clear = true;
    for (std::size_t i = 0; i < trenches.size(); i += step) {
      const Polyline line = middle_line(trenches[i]);
      const QPointF end = at(line.back()), ahead = end - at(line[line.size() - 2]);
      const QString text = QString::number(trenches[i].number);
      const QSizeF box = text_size(text, plan_font(how_.text, QFont::DemiBold));
      const QPointF middle = end + 0.75 * how_.text / std::hypot(ahead.x(), ahead.y()) * ahead;
      const QRectF place(middle - QPointF(box.width(), 0.9 * how_.text) / 2,
                         QSizeF(box.width(), 0.9 * how_.text));
      for (const Number& other : numbers_)
        clear = clear && !other.box.adjusted(-0.1 * how_.text, 0, 0.1 * how_.text, 0).intersects(place);
      numbers_.push_back({text, place});
    }
    if (clear) return;
  }
}

NamePlace Names::name_of(const Thing& thing) const {
  NamePlace name;
  name.name = thing.name;
  name.thing = thing.outline;
  const QFont font = face(how_.text);
  name.lines = sheet::wrapped(thing.name, font, kWidest * size_.width() - kGap * how_.text, 3);
  double wide = 0;
  for (const QString& line : name.lines) wide = std::max(wide, sheet::width_of(line, font));
  name.box = QRectF(0, 0, wide, kLine * how_.text * static_cast<double>(name.lines.size()));
  return name;
}

// On one line or two, as near to its heart as it goes without touching anything else.
bool Names::stands_inside(const Thing& thing) {
  const QFont font = face(how_.text);
  const QRectF room = thing.outline.boundingRect();
  for (const int lines : {1, 2}) {
    NamePlace name;
    name.name = thing.name;
    name.thing = thing.outline;
    name.lines = lines == 1 ? QStringList{thing.name} : sheet::wrapped(thing.name, font, 0.9 * room.width());
    // No word is broken.
    if (name.lines.size() != lines || name.lines.join(' ') != thing.name.simplified()) continue;
    double wide = 0;
    for (const QString& line : name.lines) wide = std::max(wide, sheet::width_of(line, font));
    const QSizeF size(wide + 0.5 * how_.text, kLine * how_.text * lines);
    double nearest = 1e9;
    for (int i = 0; i <= 24; ++i)
      for (int k = 0; k <= 24; ++k) {
        const QPointF middle = room.topLeft() + QPointF(i * room.width() / 24, k * room.height() / 24);
        const double off = QLineF(middle, thing.heart).length();
        const QRectF box(middle - QPointF(size.width(), size.height()) / 2, size);
        if (off >= nearest || !holds(thing.outline, box)) continue;
        const bool taken =
            std::ranges::any_of(bands_, [&](const QPolygonF& band) { return meet(box, band); }) ||
            std::ranges::any_of(numbers_, [&](const Number& n) { return n.box.intersects(box); }) ||
            std::ranges::any_of(
                things_, [&](const Thing& other) { return &other != &thing && meet(box, other.outline); });
        if (taken) continue;
        nearest = off;
        name.box = box.adjusted(0.25 * how_.text, 0, -0.25 * how_.text, 0);
      }
    if (nearest < 1e9) {
      inside_.push_back(name);
      return true;
    }
  }
  return false;
}

// A little inside of the outline, where the line to its heart comes in.
QPointF Names::end_at(const Thing& thing, QPointF from) const {
  QPointF enters = thing.heart;
  double least = 1e9;
  const QLineF line(from, thing.heart);
  for (qsizetype i = 0; i < thing.outline.size(); ++i) {
    QPointF p;
    const QLineF edge(thing.outline[i], thing.outline[(i + 1) % thing.outline.size()]);
    if (line.intersects(edge, &p) != QLineF::BoundedIntersection || QLineF(from, p).length() >= least)
      continue;
    least = QLineF(from, p).length();
    enters = p;
  }
  const QLineF in(enters, thing.heart);
  return in.length() < 0.5 * how_.text ? thing.heart : in.pointAt(0.5 * how_.text / in.length());
}

// Names of one side under one another, each as near to its thing's height as those before leave it.
void Names::stack(std::vector<std::size_t> side, bool left) {
  std::ranges::stable_sort(side, {}, [&](std::size_t i) { return meant_[i]->heart.y(); });
  const auto put = [&] {
    double y = 0, high = 0;
    for (const std::size_t i : side) high += beside_[i].box.height();
    for (const std::size_t i : side) {
      QRectF& box = beside_[i].box;
      const double want = meant_[i]->heart.y() - box.height() / 2;
      y = std::max(y, std::min(want, size_.height() - high));
      box.moveTopLeft(
          {left ? lot_.left() - kGap * how_.text - box.width() : lot_.right() + kGap * how_.text, y});
      y += box.height();
      high -= box.height();
      const QPointF from(left ? box.right() + 0.25 * how_.text : box.left() - 0.25 * how_.text,
                         box.center().y());
      beside_[i].leader = QLineF(from, end_at(*meant_[i], from));
    }
  };
  put();
  // Two that cross change places: every change shortens both together, so it ends.
  for (std::size_t round = 0; round < side.size(); ++round)
    for (std::size_t k = 0; k + 1 < side.size(); ++k)
      if (beside_[side[k]].leader->intersects(*beside_[side[k + 1]].leader, nullptr) ==
          QLineF::BoundedIntersection) {
        std::swap(side[k], side[k + 1]);
        put();
      }
}

double Names::cost() {
  std::vector<std::size_t> sides[2];
  for (std::size_t i = 0; i < beside_.size(); ++i) sides[left_[i] ? 0 : 1].push_back(i);
  stack(sides[0], true);
  stack(sides[1], false);
  double sum = 0;
  for (std::size_t i = 0; i < beside_.size(); ++i) {
    const QLineF& line = *beside_[i].leader;
    sum += line.length() / (10 * how_.text);
    for (std::size_t k = 0; k < i; ++k)
      if (line.intersects(*beside_[k].leader, nullptr) == QLineF::BoundedIntersection) sum += 50;
    for (const Thing& other : things_)
      if (&other != meant_[i] && meet(line, other.outline)) sum += other.in_way;
    for (const QPolygonF& band : bands_) sum += meet(line, band) ? 0.7 : 0;
    for (const NamePlace& name : inside_) sum += meet(line, QPolygonF(name.box)) ? 10 : 0;
    for (const Number& number : numbers_) sum += meet(line, QPolygonF(number.box)) ? 10 : 0;
  }
  return sum;
}

// Each goes to the side where all together are best: from the nearer side on, one or two moved at a time.
void Names::set_beside() {
  const std::size_t n = beside_.size();
  left_.assign(n, false);
  for (std::size_t i = 0; i < n; ++i) left_[i] = meant_[i]->heart.x() < lot_.center().x();
  if (n == 0) return;
  double least = cost();
  bool better = true;
  for (std::size_t round = 0; better && round < kRounds; ++round) {
    better = false;
    for (std::size_t i = 0; i < n; ++i)
      for (std::size_t k = i; k < n; ++k) {
        const auto flip = [&] {
          left_[i] = !left_[i];
          if (k != i) left_[k] = !left_[k];
        };
        flip();
        if (const double now = cost(); now < least - 1e-9) {
          least = now;
          better = true;
        } else {
          flip();
        }
      }
  }
  cost();  // of the best, which puts them there
}

void paint_name(QPainter& painter, const NamePlace& name, double text) {
  const QFont font = face(text);
  double y = name.box.top() + kLine * text / 2;
  for (const QString& line : name.lines) {
    double x = name.box.center().x();
    if (name.leader)  // towards the lot
      x = name.leader->p1().x() > name.box.center().x() ? name.box.right() - sheet::width_of(line, font) / 2
                                                        : name.box.left() + sheet::width_of(line, font) / 2;
    paint_text(painter, line, font, kText, name.leader ? Qt::transparent : kHalo, {x, y}, 0, 0.2 * text);
    y += kLine * text;
  }
}

void paint_leader(QPainter& painter, const QLineF& line, double text) {
  painter.setPen(QPen(kHalo, 0.2 * text, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(line);
  painter.setPen(QPen(kText, 0.06 * text));
  painter.drawLine(line);
  painter.setBrush(kText);
  painter.drawEllipse(line.p2(), 0.14 * text, 0.14 * text);
  painter.setBrush(Qt::NoBrush);
}

constexpr int kDistances = 6;  // the nearest

// From what people love to the nearest digging; how far stands where no name and no number does.
void paint_distances(QPainter& painter, const Plan& plan, const Outcome& outcome, const Names& names,
                     Labels& labels, double text) {
  int shown = 0;
  for (const Loved& l : loved(plan, outcome)) {
    if (++shown > kDistances) break;
    const QLineF line(names.at(l.line.a), names.at(l.line.b));
    if (line.length() < 0.5 * text) continue;
    painter.setPen(QPen(kText, 0.1 * text));
    painter.drawLine(line);
    painter.setBrush(kText);
    for (const QPointF& end : {line.p1(), line.p2()}) painter.drawEllipse(end, 0.16 * text, 0.16 * text);
    painter.setBrush(Qt::NoBrush);
    Label label;
    label.text = family_length(plan, l.distance);
    label.font = plan_font(text, QFont::DemiBold);
    label.colour = kText;
    label.places =
        places_around(line.pointAt(0.5), QSizeF(0.2 * text, 0.2 * text), label.text, label.font, 4);
    labels.add(std::move(label));
  }
}

}  // namespace

double named_lot_height(const Plan& plan, const Outcome* outcome, double width, const LotPicture& how) {
  // Room without end above and below: what the width leaves of it.
  const Names names(plan, outcome, QSizeF(width, 100 * width), how);
  return names.lot_height() + (2 * kMargin + (how.frame ? kFrame : 0)) * how.text;
}

std::vector<NamePlace> place_names(const Plan& plan, const Outcome* outcome, QSizeF size,
                                   const LotPicture& how) {
  return Names(plan, outcome, size, how).take_all();
}

void paint_named_lot(QPainter& painter, const Plan& plan, const Outcome* outcome, const QRectF& area,
                     const LotPicture& how) {
  Names names(plan, outcome, area.size(), how);
  LotPicture bare = how;
  bare.names = bare.numbers = bare.distances = false;
  paint_lot_picture(painter, plan, outcome, area.adjusted(names.left_column(), 0, -names.right_column(), 0),
                    bare);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(area.topLeft());
  for (const auto& number : names.numbers())
    paint_text(painter, number.text, plan_font(how.text, QFont::DemiBold), kText, kHalo, number.box.center(),
               0, 0.15 * how.text);
  const std::vector<NamePlace> all = names.take_all();
  for (const NamePlace& name : all)
    if (name.leader) paint_leader(painter, *name.leader, how.text);
  if (how.distances && outcome != nullptr) {
    Labels labels;
    for (const NamePlace& name : all) {
      labels.keep_off(QPolygonF(name.box));
      if (name.leader) labels.avoid(QPolygonF{name.leader->p1(), name.leader->p2()});
    }
    for (const auto& number : names.numbers()) labels.keep_off(QPolygonF(number.box));
    paint_distances(painter, plan, *outcome, names, labels, how.text);
    labels.paint(painter, QRectF(QPointF(0, 0), area.size()), kHalo, how.text / 14);
  }
  for (const NamePlace& name : all) paint_name(painter, name, how.text);
  painter.restore();
}

}  // namespace underlawn
