// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/lot_picture.h"

#include <QObject>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "base/quantity.h"
#include "canvas/hatch.h"
#include "canvas/labels.h"
#include "canvas/look.h"
#include "dig/dig_order.h"
#include "layout/amounts.h"
#include "plane/region.h"
#include "plane/strip.h"
#include "sheets/ground_at.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

const QColor kLawn = "#d3e4b8";
const QColor kLawnLine = "#8fae68";
const QColor kPaving = "#d9d5cb";
const QColor kGarden = "#e6cfae";
const QColor kRoof = "#c8775a";
const QColor kRoofShade = "#b5654a";
const QColor kCrown = "#7fa65a";
const QColor kWater = "#4f86b8";
const QColor kTrampled = "#cdbd8f";
const QColor kEarth = "#b68d5f";
const QColor kTrench = "#5b4029";
const QColor kSown = "#b4cd86";
const QColor kLoop = QColor(86, 142, 178, 150);
const QColor kText = "#2b2a26";
const QColor kFilled = kEarth.lighter(125);
constexpr double kHatch = 0.5;                                // of the letters' height
constexpr double kHeaped = 45, kStrawn = 90, kTrodden = 135;  // degrees

struct Scene {
  QPainter& p;
  const Plan& plan;
  const Outcome* outcome;
  const LotPicture& how;
  View view;

  double line() const { return how.text / 12; }
  QPointF at(Point q) const { return view.to_device(q); }
  QPolygonF polygon(const std::vector<Point>& points) const {
    QPolygonF polygon;
    for (Point q : points) polygon << at(q);
    return polygon;
  }
  QPainterPath path(const Region& region) const {
    QPainterPath all;
    for (const Polygon& part : region) {
      all.addPolygon(polygon(part.outer));
      all.closeSubpath();
      for (const Ring& hole : part.holes) {
        all.addPolygon(polygon(hole));
        all.closeSubpath();
      }
    }
    return all;
  }
  void fill(const std::vector<Point>& points, const QColor& colour) {
    p.setPen(Qt::NoPen);
    p.setBrush(colour);
    p.drawPolygon(polygon(points));
  }
  // Told from plain ground in grey too: outlined and hatched at an angle (degrees).
  void fill_hatched(const std::vector<Point>& points, const QColor& colour, double angle) {
    if (points.size() < 3) return;
    const QPolygonF area = polygon(points);
    p.setPen(pen(kTrench, 0.5));
    p.setBrush(colour);
    p.drawPolygon(area);
    p.drawLines(
        hatch_lines({area}, {kHatch * how.text, angle, area.front()}, QRectF(QPointF(0, 0), view.size)));
  }
  QPen pen(const QColor& colour, double weight) const {
    return QPen(colour, weight * line(), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  }
};

bool underground(FeatureKind kind) {
  return kind == FeatureKind::septic_tank || kind == FeatureKind::drain_field ||
         kind == FeatureKind::reserve_field;
}

void paint_ground(Scene& s) {
  const Ring lot = lot_ring(s.plan.site);
  if (lot.size() < 3) return;
  s.p.setPen(s.pen(kLawnLine, 1.4));
  s.p.setBrush(kLawn);
  s.p.drawPolygon(s.polygon(lot));
}

// What lies under the grass is only hinted at.
void paint_underground(Scene& s) {
  for (const Feature& f : s.plan.site.features) {
    if (!underground(f.kind) || f.points.size() < 3) continue;
    QPen pen = s.pen(kLawnLine.darker(120), 1);
    pen.setDashPattern({3, 3});
    s.p.setPen(pen);
    s.p.setBrush(Qt::NoBrush);
    s.p.drawPolygon(s.polygon(f.points));
  }
}

void paint_paving(Scene& s) {
  for (const Feature& f : s.plan.site.features) {
    if (f.points.size() < 3) continue;
    if (f.kind == FeatureKind::drive) s.fill(f.points, kPaving);
    if (f.kind != FeatureKind::no_dig) continue;
    s.fill(f.points, kGarden);
    s.p.setPen(s.pen(kEarth.lighter(110), 0.7));
    s.p.drawLines(hatch_lines({s.polygon(f.points)}, {s.how.text * 0.7, 0, s.at(f.points[0])},
                              QRectF(QPointF(0, 0), s.view.size)));
  }
}

void paint_houses(Scene& s) {
  for (const Feature& f : s.plan.site.features) {
    if (f.kind != FeatureKind::house || f.points.size() < 3) continue;
    const QPolygonF walls = s.polygon(f.points);
    s.p.setPen(Qt::NoPen);
    s.p.setBrush(QColor(0, 0, 0, 38));
    s.p.drawPolygon(walls.translated(0.35 * s.how.text, 0.45 * s.how.text));
    s.p.setBrush(kRoof);
    s.p.setPen(s.pen(kRoofShade, 1.2));
    s.p.drawPolygon(walls);
    s.p.setPen(s.pen(kRoofShade, 0.6));
    const QPointF origin = walls[0];
    const double angle = -QLineF(walls[0], walls[1]).angle();
    s.p.drawLines(
        hatch_lines({walls}, {0.62 * s.how.text, -angle, origin}, QRectF(QPointF(0, 0), s.view.size)));
  }
}

// Half the root zone stands for the crown.
void paint_trees(Scene& s) {
  for (const Feature& f : s.plan.site.features) {
    if (f.kind != FeatureKind::tree || f.points.empty()) continue;
    const QPointF middle = s.at(f.points[0]);
    const double r = std::max(s.view.to_device(0.55 * root_zone_radius(s.plan.site, f)), 0.3 * s.how.text);
    s.p.setPen(Qt::NoPen);
    s.p.setBrush(QColor(0, 0, 0, 30));
    s.p.drawEllipse(middle + QPointF(0.12 * r, 0.16 * r), r, r);
    QColor crown = kCrown;
    crown.setAlpha(215);
    s.p.setBrush(crown);
    s.p.drawEllipse(middle, r, r);
    s.p.setBrush(crown.lighter(116));
    s.p.drawEllipse(middle - QPointF(0.2 * r, 0.22 * r), 0.62 * r, 0.58 * r);
    s.p.setBrush(QColor("#6b5136"));
    s.p.drawEllipse(middle, 0.1 * s.how.text, 0.1 * s.how.text);
  }
}

void paint_wells(Scene& s) {
  for (const Feature& f : s.plan.site.features) {
    if (f.kind != FeatureKind::well || f.points.empty()) continue;
    s.p.setPen(s.pen(kWater, 1.6));
    s.p.setBrush(Qt::white);
    s.p.drawEllipse(s.at(f.points[0]), 0.42 * s.how.text, 0.42 * s.how.text);
  }
}

// ---- the work ----

struct Cut {
  Polyline line;
  double width = 0, depth = 0;  // m, floor
  bool conduit = false;         // header or run
};

std::vector<Cut> cuts(const Plan& plan, const Layout& layout) {
  std::vector<Cut> all;
  for (const Trench& t : layout.trenches) all.push_back({middle_line(t), t.width, t.depth});
  const auto conduit = [&](const Polyline& line) {
    const Polyline clean = line.size() < 2 ? line : without_idle_points(line);
    if (clean.size() > 1 && length(clean) > kSamePlace)
      all.push_back({clean, plan.wishes.run_width, plan.wishes.run_depth, true});
  };
  for (const Polyline& leg : layout.header.legs) conduit(leg);
  conduit(layout.run.line);
  return all;
}

// Ground that wheels, earth and feet take, as the layout reckons it.
Region trampled(const Plan& plan, const std::vector<Cut>& work) {
  std::vector<Region> strips;
  for (const Cut& c : work) strips.push_back(region_of(strip_along(c.line, torn_width(c.width, c.depth))));
  Region all = intersect(unite(strips), region_of(lot_ring(plan.site)));
  for (const Feature& f : plan.site.features)
    if ((f.kind == FeatureKind::house || f.kind == FeatureKind::drive) && f.points.size() > 2)
      all = subtract(all, region_of(f.points));
  return all;
}

// The heap beside a trench: to its left, so that heaps of neighbours do not meet.
void paint_heap(Scene& s, const Polyline& line, const Cut& cut) {
  const double heap = std::sqrt(4 * cut.width * cut.depth * kSpoilSwell * kSpoilSlope / 2 / 2);
  const double middle = cut.width / 2 + kSpoilOff + heap / 2;
  Polyline beside_it;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Point ahead = i + 1 < line.size() ? unit(line[i + 1] - line[i]) : unit(line[i] - line[i - 1]);
    beside_it.push_back(line[i] + middle * left_normal(ahead));
  }
  const QPolygonF foot = s.polygon(strip_along(beside_it, heap)),
                  crest = s.polygon(strip_along(beside_it, 0.35 * heap));
  s.p.setPen(Qt::NoPen);
  s.p.setBrush(QColor(0, 0, 0, 26));
  s.p.drawPolygon(foot.translated(0.18 * s.how.text, 0.24 * s.how.text));
  s.p.setBrush(kEarth);
  s.p.drawPolygon(foot);
  s.p.setBrush(kEarth.lighter(116));
  s.p.drawPolygon(crest);
}

void paint_open(Scene& s, const Layout& layout) {
  const std::vector<Cut> all = cuts(s.plan, layout);
  double whole = 0, done = 0;
  for (const Cut& c : all) whole += length(c.line) * c.width * c.depth;
  std::vector<std::pair<Polyline, const Cut*>> open;
  for (const Cut& c : all) {
    const double own = length(c.line) * c.width * c.depth;
    const double share = own > 0 ? (s.how.dug * whole - done) / own : 0;
    done += own;
    if (share <= 1e-6) break;
    // Dug from its far end back to its head.
    Polyline line = c.line;
    std::reverse(line.begin(), line.end());
    open.emplace_back(first_part(line, share), &c);
  }
  s.p.save();
  s.p.setClipPath(s.path(region_of(lot_ring(s.plan.site))));
  for (const auto& [line, cut] : open) paint_heap(s, line, *cut);
  for (const auto& [line, cut] : open) s.fill(strip_along(line, cut->width), kTrench);
  s.p.restore();
}

// Told from plain ground in grey too: outlined and hatched.
void fill_region(Scene& s, const Region& region, const QColor& colour, std::optional<double> hatch) {
  if (region.empty()) return;
  const bool dark = hatch && colour != kTrampled;
  s.p.setPen(s.pen(dark ? kTrench : kTrench.lighter(190), 0.5));
  s.p.setBrush(colour);
  s.p.drawPath(s.path(region));
  if (!hatch) return;
  QVector<QPolygonF> rings;
  for (const Polygon& part : region) {
    rings.push_back(s.polygon(part.outer));
    for (const Ring& hole : part.holes) rings.push_back(s.polygon(hole));
  }
  s.p.drawLines(hatch_lines(rings, {kHatch * s.how.text, *hatch, rings.front().front()},
                            QRectF(QPointF(0, 0), s.view.size)));
}

void paint_trampled(Scene& s, const std::vector<Cut>& work) {
  fill_region(s, trampled(s.plan, work), kTrampled, kTrodden);
}

// As the dig plan has it at a moment of the calendar: its heaps lie where it puts them.
void paint_calendar(Scene& s, double at) {
  const GroundAt now = ground_at(s.plan, *s.outcome, at);
  fill_region(s, now.trodden, kTrampled, kTrodden);
  fill_region(s, now.filled, kFilled, kStrawn);
  fill_region(s, now.heaps, kEarth, kHeaped);
  fill_region(s, now.open, kTrench, std::nullopt);
}

void paint_closed(Scene& s, const std::vector<Cut>& all) {
  if (s.outcome->order)
    fill_region(s, ground_used(s.plan, *s.outcome), kSown, std::nullopt);
  else
    fill_region(s, trampled(s.plan, all), kSown, std::nullopt);
  for (const Cut& c : all) s.fill_hatched(strip_along(c.line, 1.15 * c.width), kFilled, kStrawn);
}

// The loop as it lies under the grass: bands as wide as its trenches, striped so that they are known in grey,
// and no dashes, which septic parts have. The smaller trench is plain: so one sees where a trench begins that
// it leads on to.
void paint_loop(Scene& s) {
  const QColor dark = kLoop.darker(190);
  const QRectF room(QPointF(0, 0), s.view.size);
  std::vector<Cut> all = cuts(s.plan, s.outcome->layout);
  // Trenches last: one that the run shares is seen as a trench.
  std::reverse(all.begin(), all.end());
  for (const Cut& c : all) {
    const QPolygonF band = s.polygon(strip_along(c.line, c.width));
    s.p.setPen(s.pen(dark, 0.9));
    s.p.setBrush(c.conduit ? Qt::white : kLoop);
    s.p.drawPolygon(band);
    if (c.conduit) continue;
    s.p.setPen(s.pen(dark, 0.6));
    const double across = QLineF(s.at(c.line.front()), s.at(c.line[1])).angle() + 60;
    s.p.drawLines(hatch_lines({band}, {0.45 * s.how.text, across, band.front()}, room));
  }
}

void paint_work(Scene& s) {
  if (s.outcome == nullptr || s.how.moment == LotMoment::before || lot_ring(s.plan.site).size() < 3) return;
  const Layout& layout = s.outcome->layout;
  if (layout.trenches.empty()) return;
  const std::vector<Cut> all = cuts(s.plan, layout);
  if (s.how.moment == LotMoment::digging) {
    if (s.how.at && s.outcome->calendar && s.outcome->order) return paint_calendar(s, *s.how.at);
    paint_trampled(s, all);
    paint_open(s, layout);
  } else if (s.how.moment == LotMoment::closed) {
    paint_closed(s, all);
  } else if (s.how.loop_below) {
    paint_loop(s);
  }
}

// A bar of a round length and north, in the strip under the lot.
void paint_frame(Scene& s, const QRectF& strip) {
  const bool us = s.plan.units == UnitSystem::us;
  const double unit = us ? 0.3048 : 1;
  double whole = us ? 10 : 2;
  for (const double longer : {5.0, 10.0, 20.0, 40.0, 50.0, 100.0, 200.0})
    if (s.view.to_device(longer * unit) < 0.24 * strip.width()) whole = longer;
  const double wide = s.view.to_device(whole * unit), y = strip.center().y();
  const QString words = us ? QString("%1 ft").arg(whole) : QString("%1 m").arg(whole);
  const QFont font = plan_font(0.95 * s.how.text);
  const double text = text_size(words, font).width();
  const double left = strip.center().x() - (wide + text + 3.2 * s.how.text) / 2;
  s.p.setPen(s.pen(kText, 1.1));
  s.p.drawLine(QPointF(left, y), QPointF(left + wide, y));
  for (const double x : {left, left + wide})
    s.p.drawLine(QPointF(x, y - 0.3 * s.how.text), QPointF(x, y + 0.3 * s.how.text));
  paint_text(s.p, words, font, kText, Qt::transparent, {left + wide + 0.6 * s.how.text + text / 2, y}, 0, 0);
  // North: an arrow, and its letter behind the tip.
  const QPointF middle(left + wide + text + 2.6 * s.how.text, y);
  const double north = s.plan.site.north;
  const QPointF ahead(std::cos(north), -std::sin(north)), side(-ahead.y(), ahead.x());
  s.p.setPen(Qt::NoPen);
  s.p.setBrush(kText);
  s.p.drawPolygon(
      QPolygonF({middle + 0.75 * s.how.text * ahead, middle + s.how.text * (-0.55 * ahead + 0.38 * side),
                 middle - 0.3 * s.how.text * ahead, middle + s.how.text * (-0.55 * ahead - 0.38 * side)}));
  paint_text(s.p, QObject::tr("N"), plan_font(0.95 * s.how.text, QFont::DemiBold), kText, Qt::transparent,
             middle + QPointF(1.1 * s.how.text, 0), 0, 0);
}

}  // namespace

std::vector<PictureColour> picture_colours(const Plan& plan, const Outcome& outcome) {
  std::vector<PictureColour> all{{kTrench, QObject::tr("open trench")}};
  const auto is_there = [&plan](FeatureKind kind) {
    return std::ranges::any_of(plan.site.features, [kind](const Feature& f) { return f.kind == kind; });
  };
  if (!outcome.order ||
      std::ranges::any_of(outcome.order->steps, [](const DigStep& step) { return !step.spoil.empty(); }))
    all.push_back({kEarth, QObject::tr("heaped earth"), kHeaped});
  all.push_back({kFilled, QObject::tr("filled in"), kStrawn});
  all.push_back({kTrampled, QObject::tr("ways, pipe laid ready"), kTrodden});
  all.push_back({kSown, QObject::tr("sown")});
  if (is_there(FeatureKind::house)) all.push_back({kRoof, QObject::tr("house")});
  if (is_there(FeatureKind::drive)) all.push_back({kPaving, QObject::tr("paving")});
  if (is_there(FeatureKind::no_dig)) all.push_back({kGarden, QObject::tr("not dug"), 0});
  return all;
}

double set_picture_key(QPainter* painter, const QRectF& room, const std::vector<PictureColour>& key,
                       double text) {
  const QFont font = plan_font(text);
  const double box = 0.9 * text, line = 1.6 * text;
  double x = room.left(), y = room.top();
  for (const PictureColour& one : key) {
    const QSizeF words = text_size(one.words, font);
    const double wide = box + 0.4 * text + words.width();
    if (x > room.left() && x + wide > room.right()) {
      x = room.left();
      y += line;
    }
    if (painter != nullptr) {
      painter->setPen(QPen(kText, 0.05 * text));
      painter->setBrush(one.colour);
      const QRectF swatch(x, y + (line - box) / 2, box, box);
      painter->drawRect(swatch);
      if (one.hatch)
        painter->drawLines(
            hatch_lines({QPolygonF(swatch)}, {0.3 * text, *one.hatch, swatch.center()}, swatch));
      paint_text(*painter, one.words, font, kText, Qt::transparent,
                 {x + box + 0.4 * text + words.width() / 2, y + line / 2}, 0, 0);
    }
    x += wide + 0.8 * text;
  }
  return key.empty() ? 0 : y + line - room.top();
}

View lot_picture_view(const Plan& plan, QSizeF size, double text) {
  std::vector<Point> points = lot_ring(plan.site);
  if (points.size() < 3) points.clear();
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house || points.empty())
      for (Point p : f.points) points.push_back(p);
  if (points.empty()) points = {{0, 0}, {10, 10}};
  return fit_view(bounds(points), size, 1.2 * text);
}

void paint_lot_picture(QPainter& painter, const Plan& plan, const Outcome* outcome, const QRectF& area,
                       const LotPicture& how) {
  const double strip = how.frame ? 2.4 * how.text : 0;
  const QSizeF size(area.width(), area.height() - strip);
  Scene s{painter, plan, outcome, how, lot_picture_view(plan, size, how.text)};
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setClipRect(area);
  painter.translate(area.topLeft());
  paint_ground(s);
  paint_underground(s);
  paint_work(s);
  paint_paving(s);
  paint_houses(s);
  paint_wells(s);
  paint_trees(s);
  if (how.frame) paint_frame(s, QRectF(0, size.height(), size.width(), strip));
  painter.restore();
}

}  // namespace underlawn
