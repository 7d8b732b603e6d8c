// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/name_places.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "canvas/labels.h"
#include "canvas/look.h"
#include "plane/strip.h"
#include "sheets/name_geometry.h"
#include "sheets/sheet_type.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr double kGap = 0.9;         // of the letters' height, from the lot to a name beside it
constexpr double kWidest = 0.23;     // of the picture's width that a column takes
constexpr int kMostLines = 3;        // of a name beside the lot
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

class Names {
 public:
  Names(const Plan& plan, const Outcome* outcome, QSizeF size, const LotPicture& how)
      : plan_(plan),
        outcome_(outcome),
        how_(how),
        size_(size.width(), size.height() - (how.frame ? kNamesFrame * how.text : 0)) {
    if (!how.names) {
      take(0, 0);
      return;
    }
    // Many long names are higher than the picture: they are cut to fewer lines then.
    for (most_lines_ = kMostLines; most_lines_ > 0; --most_lines_) {
      lay();
      if (overflow() <= 0) break;
    }
  }

  LaidNames take_all() {
    LaidNames all{left_column_, right_column_, view_, lot_, std::move(inside_), std::move(numbers_)};
    all.names.insert(all.names.end(), beside_.begin(), beside_.end());
    return all;
  }

 private:
  // Seen with the widest columns first: what stands beside the lot and on which side. Then each column is as
  // wide as its widest name.
  void lay() {
    const double most = kWidest * size_.width();
    take(most, most);
    set_beside();
    const double left = widest(true), right = widest(false);
    const std::map<std::size_t, bool> sides = sides_by_thing();
    take(left, right);
    for (const Thing* thing : meant_) {
      const auto side = sides.find(number_of(thing));
      left_.push_back(side != sides.end() ? side->second : thing->heart.x() < lot_.center().x());
    }
    cost();  // puts them there
  }
  // By how much the names beside the lot are higher than the picture, both columns together.
  double overflow() const {
    double high[2] = {0, 0};
    for (std::size_t i = 0; i < beside_.size(); ++i) high[left_[i] ? 0 : 1] += beside_[i].box.height();
    return std::max(0.0, high[0] - size_.height()) + std::max(0.0, high[1] - size_.height());
  }

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
  std::size_t number_of(const Thing* thing) const { return static_cast<std::size_t>(thing - things_.data()); }
  std::map<std::size_t, bool> sides_by_thing() const {
    std::map<std::size_t, bool> sides;
    for (std::size_t i = 0; i < beside_.size(); ++i) sides[number_of(meant_[i])] = left_[i];
    return sides;
  }
  QPointF at(Point p) const { return view_.to_device(p) + QPointF(left_column_, 0); }
  void take_thing(const Feature& f);
  void take_numbers();
  bool set_numbers(std::size_t step, std::size_t turns);
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
  int most_lines_ = kMostLines;  // of a name beside the lot
  double left_column_ = 0, right_column_ = 0;
  View view_;
  QRectF lot_;
  std::vector<Thing> things_;
  std::vector<QPolygonF> bands_;  // of the loop
  std::vector<NumberPlace> numbers_;
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
                   std::max(view_.to_device(0.55 * root_zone_radius(plan_.site, f)), 0.3 * how_.text));
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

// Beyond each trench's end, in turn nearer and farther where they would stand on one another; where that does
// not do either, every second, third ..
void Names::take_numbers() {
  numbers_.clear();
  if (!how_.numbers || !shows_work()) return;
  const std::size_t most = outcome_->layout.trenches.size();
  for (std::size_t step = 1; step <= most; ++step)
    for (const std::size_t turns : {1, 2})
      if (set_numbers(step, turns)) return;
}

// Whether none stands on another.
bool Names::set_numbers(std::size_t step, std::size_t turns) {
  numbers_.clear();
  bool clear = true;
  const auto& trenches = outcome_->layout.trenches;
  for (std::size_t i = 0; i < trenches.size(); i += step) {
    const Polyline line = middle_line(trenches[i]);
    const QPointF end = at(line.back()), ahead = end - at(line[line.size() - 2]);
    const QString text = QString::number(trenches[i].number);
    const QSizeF box = text_size(text, plan_font(how_.text, QFont::DemiBold));
    const double off = 0.75 + 0.85 * static_cast<double>(i / step % turns);
    const QPointF middle = end + off * how_.text / std::hypot(ahead.x(), ahead.y()) * ahead;
    const QRectF place(middle - QPointF(box.width(), 0.9 * how_.text) / 2,
                       QSizeF(box.width(), 0.9 * how_.text));
    for (const NumberPlace& other : numbers_)
      clear = clear && !other.box.adjusted(-0.1 * how_.text, 0, 0.1 * how_.text, 0).intersects(place);
    numbers_.push_back({text, place});
  }
  return clear;
}

NamePlace Names::name_of(const Thing& thing) const {
  NamePlace name;
  name.name = thing.name;
  name.thing = thing.outline;
  const QFont font = face(how_.text);
  name.lines = sheet::wrapped(thing.name, font, kWidest * size_.width() - kGap * how_.text, most_lines_);
  double wide = 0;
  for (const QString& line : name.lines) wide = std::max(wide, sheet::width_of(line, font));
  name.box = QRectF(0, 0, wide, kNameLine * how_.text * static_cast<double>(name.lines.size()));
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
    const QSizeF size(wide + 0.5 * how_.text, kNameLine * how_.text * lines);
    double nearest = 1e9;
    for (int i = 0; i <= 24; ++i)
      for (int k = 0; k <= 24; ++k) {
        const QPointF middle = room.topLeft() + QPointF(i * room.width() / 24, k * room.height() / 24);
        const double off = QLineF(middle, thing.heart).length();
        const QRectF box(middle - QPointF(size.width(), size.height()) / 2, size);
        if (off >= nearest || !holds(thing.outline, box)) continue;
        const bool taken =
            std::ranges::any_of(bands_, [&](const QPolygonF& band) { return meet(box, band); }) ||
            std::ranges::any_of(numbers_, [&](const NumberPlace& n) { return n.box.intersects(box); }) ||
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
  double sum = 100 * overflow() / how_.text;
  for (std::size_t i = 0; i < beside_.size(); ++i) {
    const QLineF& line = *beside_[i].leader;
    sum += line.length() / (10 * how_.text);
    for (std::size_t k = 0; k < i; ++k)
      if (line.intersects(*beside_[k].leader, nullptr) == QLineF::BoundedIntersection) sum += 50;
    for (const Thing& other : things_)
      if (&other != meant_[i] && meet(line, other.outline)) sum += other.in_way;
    for (const QPolygonF& band : bands_) sum += meet(line, band) ? 0.7 : 0;
    for (const NamePlace& name : inside_) sum += meet(line, QPolygonF(name.box)) ? 10 : 0;
    for (const NumberPlace& number : numbers_) sum += meet(line, QPolygonF(number.box)) ? 10 : 0;
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

}  // namespace

LaidNames lay_names(const Plan& plan, const Outcome* outcome, QSizeF size, const LotPicture& how) {
  return Names(plan, outcome, size, how).take_all();
}

}  // namespace underlawn
