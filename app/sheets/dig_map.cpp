// SPDX-License-Identifier: GPL-3.0-or-later
// The lot again to scale, with heaps, order numbers and the machine's way.
#include <algorithm>

#include "canvas/paint_context.h"
#include "canvas/plan_painter.h"
#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "plan/roots_driven.h"
#include "plane/region.h"
#include "sheets/contents.h"
#include "sheets/dig_key.h"
#include "sheets/map_parts.h"
#include "sheets/off_page.h"
#include "sheets/paper.h"
#include "site/clearances.h"

namespace underlawn::sheet {

namespace {

const double kAround = pt(10);
const double kGap = pt(14);
const double kNorth = pt(44);
const double kUpright = pt(190);  // least width of words beside the map

// Where is dug, heaped and driven, and the buildings beside it.
Box work_box(const Plan& plan, const DigOrder& order) {
  std::vector<Point> all;
  const auto add = [&](const std::vector<Point>& points) {
    all.insert(all.end(), points.begin(), points.end());
  };
  for (const DigStep& step : order.steps) {
    add(step.line);
    for (const Polyline* way : {&step.way, &step.truck_way, &step.fill_way}) add(*way);
    for (const Ring& heap : step.spoil) add(heap);
  }
  add(order.way_out);
  if (order.access) all.push_back(*order.access);
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house) add(f.points);
  Box box = bounds(all);
  const Point r{order.laydown_radius, order.laydown_radius};
  if (order.laydown) box = bounds(Ring{box.low, box.high, *order.laydown - r, *order.laydown + r});
  return box;
}

// A heap whose own trench is filled by others' earth is what fills one that no earth falls into.
QString carried_last(const DigOrder& order) {
  std::vector<int> filled;
  for (const DigStep& s : order.steps) filled.insert(filled.end(), s.into.begin(), s.into.end());
  QStringList from, to;
  for (std::size_t i = 0; i < order.steps.size(); ++i) {
    const DigStep& s = order.steps[i];
    if (s.kind != DigKind::trench) continue;
    const bool by_others = std::ranges::count(filled, s.trench) > 0;
    const QString numeral = text_of(step_numeral(static_cast<int>(i) + 1));
    if (by_others && s.into.empty() && !s.spoil.empty()) from << numeral;
    if (!by_others && !s.into.empty()) to << numeral;
  }
  if (from.empty() || to.empty()) return "";
  return QObject::tr(
             "After the test of the whole loop open heads are filled first; then the loader carries the heap "
             "of %1 over the trenches filled by then to %2.")
      .arg(from.join(", "), to.join(", "));
}

// The whole lot where it is shown as large as the work, or nearly so.
constexpr double kLotAsLarge = 1.25;

void paint_roots(PaintContext& c, Point trunk, double radius) {
  const double r = c.view.to_device(radius);
  QColor shade = c.look.tree;
  shade.setAlphaF(0.10F);
  c.painter.setPen(c.dashed(c.look.tree, 1.1, {5, 2, 1, 2}));
  c.painter.setBrush(shade);
  c.painter.drawEllipse(c.at(trunk), r, r);
  c.painter.setBrush(Qt::NoBrush);
}

// The largest usual scale at which the work fits a page; the key beside it where it leaves room, else under
// it.
class DigMap : public Block {
 public:
  DigMap(const Plan& plan, const Outcome& outcome, QSizeF page)
      : plan_(plan),
        outcome_(outcome),
        box_(work_box(plan, *outcome.order)),
        signs_(dig_signs(*outcome.order, plan.dig.excavator.width, plan.units)),
        roots_(roots_driven(plan, outcome)),
        page_(page) {
    if (!roots_.empty())
      signs_.push_back({QObject::tr("roots driven over: mats first"), [](PaintContext& c) {
                          paint_roots(c, {17, 5}, 4.5);
                        }});
    for (const DigStep& step : outcome.order->steps)
      steps_ << QString("%1  %2").arg(text_of(step_numeral(static_cast<int>(steps_.size()) + 1)),
                                      text_of(step_name(step)));
    carried_ = carried_last(*outcome.order);
    divide();
    const Box work = box_;
    const int work_scale = scale_;
    box_ = drawn_box(plan, outcome);
    box_ = bounds(Ring{box_.low, box_.high, work.low, work.high});
    divide();
    if (scale_ <= kLotAsLarge * work_scale && height(page_.width()) <= page_.height()) return;
    box_ = work;
    divide();
  }

  std::shared_ptr<const Block> for_pages(QSizeF room) const override {
    return std::make_shared<DigMap>(plan_, outcome_, room);
  }
  double height(double) const override { return heading_height() + map_.height() + under_; }
  void paint(QPainter& painter, const QRectF& room) const override;

 private:
  // Signs, north and the steps by their numbers, from the top of `room`; gives back their height.
  double key(QPainter* painter, const QRectF& room) const;
  void divide();
  void paint_map(QPainter& painter, const QRectF& map) const;

  Plan plan_;
  Outcome outcome_;
  Box box_;
  std::vector<Sign> signs_;
  std::vector<RootsDriven> roots_;
  QStringList steps_;
  QString carried_;  // what is said of the last earth, nothing where all of it lies beside its trench
  QSizeF page_;
  int scale_ = 0;
  QSizeF map_;
  double under_ = 0;  // height of the key under the map, 0 where it is beside it
};

void DigMap::divide() {
  const double wide = box_.high.x - box_.low.x, high = box_.high.y - box_.low.y;
  for (const int scale : usual_scales(plan_.units)) {
    const double k = per_metre(scale), w = wide * k + 2 * kAround, h = high * k + 2 * kAround;
    const double beside = page_.width() - w - kGap;
    const bool upright = beside >= kUpright && key(nullptr, {0, 0, beside, 0}) <= h;
    scale_ = scale;
    map_ = {upright ? w : page_.width(), h};
    under_ = upright ? 0 : kGap / 2 + key(nullptr, {0, 0, page_.width(), 0});
    if (w <= page_.width() && height(page_.width()) <= page_.height()) return;
  }
}

double DigMap::key(QPainter* painter, const QRectF& room) const {
  const QRectF words = room.adjusted(0, 0, -kNorth, 0);
  if (painter != nullptr) {
    paint_signs(*painter, words, signs_, {});
    paint_north(*painter, words.topRight() + QPointF(kNorth - pt(18), pt(22)), pt(18), plan_.site.north);
  }
  double y = room.top() + std::max(signs_height(signs_, words.width()) + pt(4), pt(46));
  const bool listed = room.width() < 0.5 * page_.width();
  for (const QString& line : wrapped(steps_.join(listed ? "\n" : ";  "), type(9), room.width())) {
    if (painter != nullptr) write(*painter, {room.left(), y + pt(9)}, line, type(9));
    y += line_height(type(9));
  }
  if (!carried_.isEmpty()) y += pt(4);
  for (const QString& line : wrapped(carried_, type(9), room.width())) {
    if (painter != nullptr) write(*painter, {room.left(), y + pt(9)}, line, type(9));
    y += line_height(type(9));
  }
  return y - room.top();
}

void DigMap::paint_map(QPainter& painter, const QRectF& map) const {
  const View view{0.5 * (box_.low + box_.high), per_metre(scale_), map.size(), 0};
  PaintOptions options;
  options.dig = options.sheet = true;
  options.coils = false;
  options.zones = options.edge_lengths = options.findings = options.heights = false;
  options.over = [this](PaintContext& c) {
    for (const RootsDriven& r : roots_) {
      const Feature* tree = find_feature(plan_.site, r.tree);
      paint_roots(c, tree->points[0], root_zone_radius(plan_.site, *tree));
    }
  };
  paint_framed(painter, map, plan_, outcome_, view, options);
}

void DigMap::paint(QPainter& painter, const QRectF& room) const {
  paint_heading(painter, room,
                QObject::tr("HEAPS, ORDER AND MACHINE %1").arg(scale_text(scale_, plan_.units)));
  const QRectF map(room.topLeft() + QPointF(0, heading_height()), map_);
  paint_map(painter, map);
  if (under_ > 0)
    key(&painter, {map.left(), map.bottom() + kGap / 2, room.width(), 0});
  else
    key(&painter, {map.right() + kGap, map.top(), room.right() - map.right() - kGap, map.height()});
}

}  // namespace

BlockPtr dig_map(const Plan& plan, const Outcome& outcome) {
  if (outcome.order == nullptr || outcome.order->steps.empty()) return nullptr;
  return std::make_shared<DigMap>(plan, outcome, size_of(Paper::letter, false));
}

}  // namespace underlawn::sheet
