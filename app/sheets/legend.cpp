// SPDX-License-Identifier: GPL-3.0-or-later
// The legend draws each thing with the very strokes of the drawing, on a lot of its own a few metres wide.
#include <algorithm>
#include <cmath>
#include <functional>

#include "canvas/paint_context.h"
#include "sheets/map_parts.h"

namespace underlawn::sheet {

namespace {

const double kRow = pt(13.5);
const double kSymbol = pt(34);

struct Entry {
  QString text;
  std::function<void(PaintContext&)> paint;
};

using Paint = void (*)(PaintContext&);

// A little plan, 34 by 10 points, drawn at one metre a point.
struct Miniature {
  Plan plan;
  Outcome outcome;
};

Feature feature(FeatureKind kind, std::vector<Point> points) {
  Feature f;
  f.id = 1;
  f.kind = kind;
  f.points = std::move(points);
  f.trunk_diameter = 0;
  return f;
}

const std::vector<Point> kArea{{2, 1}, {32, 1}, {32, 9}, {2, 9}};

Entry of_feature(const QString& text, Feature f, Paint paint) {
  return {text, [f = std::move(f), paint](PaintContext& c) {
            Miniature small;
            small.plan.site.features = {f};
            PaintContext now{c.painter, small.plan, &small.outcome, c.view, c.look, c.options, c.labels};
            paint(now);
          }};
}

Entry of_outcome(const QString& text, std::function<void(Miniature&)> fill, Paint paint) {
  return {text, [fill = std::move(fill), paint](PaintContext& c) {
            Miniature small;
            small.plan.wishes.run_width = 6;
            fill(small);
            PaintContext now{c.painter, small.plan, &small.outcome, c.view, c.look, c.options, c.labels};
            paint(now);
          }};
}

bool has(const Plan& plan, FeatureKind kind) {
  return std::any_of(plan.site.features.begin(), plan.site.features.end(),
                     [&](const Feature& f) { return f.kind == kind; });
}

void add_lot(std::vector<Entry>& all) {
  all.push_back({QObject::tr("lot line"), [](PaintContext& c) {
                   c.painter.setPen(c.dashed(c.look.lot_line, 2.2, {26, 4, 4, 4, 4, 4}));
                   c.painter.drawLine(c.at({0, 5}), c.at({34, 5}));
                 }});
  all.push_back({QObject::tr("setback"), [](PaintContext& c) {
                   c.hatch({c.line(kArea)}, 7, 45, c.pen(c.look.setback, 0.45));
                   c.painter.setPen(c.dashed(c.look.setback, 0.8, {7, 4}));
                   c.painter.drawLine(c.at({2, 1}), c.at({32, 1}));
                 }});
}

void add_field(std::vector<Entry>& all, const Layout& layout) {
  if (!layout.trenches.empty())
    all.push_back(of_outcome(
        QObject::tr("coil trench, dot at its head"),
        [](Miniature& m) {
          Trench t;
          t.number = 1;
          t.head = {2, 5};
          t.end = {34, 5};
          t.width = 8;
          t.coil = {6.5, 3.2, 7.6, 31, 0, 0, 31};
          t.coil.loop_pipe = t.coil.loops * loop_length(t.coil.loop_diameter, t.coil.pitch);
          t.coil.coil_length = t.coil.loop_pipe + t.coil.return_pipe;
          m.outcome.layout.trenches = {t};
        },
        paint_field));
  if (!layout.run.line.empty() || !layout.header.legs.empty())
    all.push_back(of_outcome(
        QObject::tr("header, run: supply and return"),
        [](Miniature& m) {
          m.outcome.layout.run.line = {{0, 5}, {34, 5}};
        },
        paint_field));
  if (!layout.crossings.empty())
    all.push_back(of_outcome(
        QObject::tr("X1  crossing: dig by hand"),
        [](Miniature& m) {
          m.outcome.layout.run.line = {{0, 5}, {34, 5}};
          Crossing x;
          x.at = {17, 5};
          x.hand_dig = 9;
          m.outcome.layout.crossings = {x};
        },
        [](PaintContext& c) {
          paint_field(c);
          paint_crossings(c);
        }));
}

// What else the plan is marked with.
void add_marks(std::vector<Entry>& all, const Outcome& outcome) {
  all.push_back({QObject::tr("ground where coil trenches may lie"), [](PaintContext& c) {
                   c.painter.setPen(Qt::NoPen);
                   c.painter.setBrush(c.look.buildable);
                   c.painter.drawPolygon(c.line(kArea));
                 }});
  const bool found = std::any_of(outcome.findings.begin(), outcome.findings.end(),
                                 [](const Finding& f) { return !f.places.empty(); });
  if (!found) return;
  all.push_back(of_outcome(
      QObject::tr("! finding: see the list of findings"),
      [](Miniature& m) {
        Finding f;
        f.severity = Severity::warning;
        f.places.push_back(Polyline{Point{17, 5}});
        m.outcome.findings = {f};
      },
      paint_findings));
}

// A corner that is taped from.
void add_corner(std::vector<Entry>& all, const Outcome& outcome) {
  if (outcome.stake_out.corners.empty()) return;
  all.push_back({QObject::tr("building corner to tape from"), [](PaintContext& c) {
                   c.painter.setPen(Qt::NoPen);
                   c.painter.setBrush(c.look.text);
                   c.painter.drawRect(QRectF(c.at({12, 10}), c.at({22, 0})));
                   paint_text(c.painter, "A", c.font(1, QFont::Bold), c.look.ground, c.look.ground,
                              c.at({17, 5}), 0, 0);
                 }});
}

void add_utilities(std::vector<Entry>& all, const Plan& plan) {
  for (UtilityKind kind : {UtilityKind::electric, UtilityKind::gas, UtilityKind::communication,
                           UtilityKind::water, UtilityKind::sewer, UtilityKind::reclaimed}) {
    const bool there =
        std::any_of(plan.site.features.begin(), plan.site.features.end(),
                    [&](const Feature& f) { return f.kind == FeatureKind::utility && f.utility == kind; });
    if (!there) continue;
    Feature f = feature(FeatureKind::utility, {{0, 5}, {34, 5}});
    f.utility = kind;
    all.push_back(of_feature(text_of(std::string(utility_name(kind))), f, paint_utilities));
  }
}

void add_features(std::vector<Entry>& all, const Plan& plan) {
  for (FeatureKind kind : {FeatureKind::drive, FeatureKind::septic_tank, FeatureKind::drain_field,
                           FeatureKind::reserve_field, FeatureKind::easement, FeatureKind::no_dig})
    if (has(plan, kind))
      all.push_back(of_feature(text_of(std::string(kind_name(kind))), feature(kind, kArea), paint_areas));
  if (has(plan, FeatureKind::well))
    all.push_back(of_feature(QObject::tr("well; dash-dot: its clearance"),
                             feature(FeatureKind::well, {{17, 5}}), paint_wells));
  if (has(plan, FeatureKind::tree)) {
    Feature tree = feature(FeatureKind::tree, {{17, 5}});
    tree.trunk_diameter = 6.0 / 18;
    all.push_back(of_feature(QObject::tr("tree and its root zone"), tree, paint_trees));
  }
}

std::vector<Entry> entries(const Plan& plan, const Outcome& outcome) {
  std::vector<Entry> all;
  add_field(all, outcome.layout);
  add_utilities(all, plan);
  add_lot(all);
  add_features(all, plan);
  add_marks(all, outcome);
  add_corner(all, outcome);
  if (plan.site.entry)
    all.push_back(of_outcome(
        QObject::tr("entry into the house"),
        [](Miniature& m) {
          m.plan.site.entry = EntryPoint{1, {17, 5}};
        },
        paint_houses));
  return all;
}

int columns_in(const std::vector<Entry>& all, double width) {
  double widest = 0;
  for (const Entry& entry : all) widest = std::max(widest, width_of(entry.text, type(8.5)));
  return std::max(1, static_cast<int>(width / (widest + kSymbol + pt(14))));
}

}  // namespace

double legend_height(const Plan& plan, const Outcome& outcome, double width) {
  const std::vector<Entry> all = entries(plan, outcome);
  const auto n = static_cast<int>(all.size());
  const int columns = columns_in(all, width);
  return pt(15) + (n + columns - 1) / columns * kRow;
}

void paint_legend(QPainter& painter, const QRectF& room, const Plan& plan, const Outcome& outcome) {
  write(painter, room.topLeft() + QPointF(0, pt(9)), QObject::tr("LEGEND"), type(9, QFont::Bold));
  const std::vector<Entry> all = entries(plan, outcome);
  const int columns = columns_in(all, room.width());
  const int rows = (static_cast<int>(all.size()) + columns - 1) / columns;
  const double step = room.width() / columns;
  Look look = sheet_look();
  look.line *= 0.85;
  look.text_size = pt(7);
  PaintOptions options;
  options.labels = options.edge_lengths = false;
  const View view{{17, 5}, pt(1), {pt(34), pt(10)}, 0};
  for (std::size_t i = 0; i < all.size(); ++i) {
    const int column = static_cast<int>(i) / rows, row = static_cast<int>(i) % rows;
    const QPointF at(room.left() + column * step, room.top() + pt(14) + row * kRow);
    Labels unused;
    PaintContext c{painter, plan, &outcome, view, look, options, unused};
    painter.save();
    painter.translate(at);
    painter.setClipRect(QRectF(0, -pt(0.5), kSymbol, pt(11)));
    all[i].paint(c);
    painter.restore();
    write(painter, at + QPointF(kSymbol + pt(5), pt(8)),
          elided(all[i].text, type(8.5), step - kSymbol - pt(8)), type(8.5));
  }
}

}  // namespace underlawn::sheet
