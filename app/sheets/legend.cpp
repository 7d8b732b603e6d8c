// SPDX-License-Identifier: GPL-3.0-or-later
// The legend draws each thing with the very strokes of the drawing, on a lot of its own a few metres wide.
#include <algorithm>
#include <cmath>

#include "sheets/map_parts.h"
#include "sheets/signs.h"

namespace underlawn::sheet {

namespace {

const double kHead = pt(14.5);

Feature feature(FeatureKind kind, std::vector<Point> points) {
  Feature f;
  f.id = 1;
  f.kind = kind;
  f.points = std::move(points);
  f.trunk_diameter = 0;
  return f;
}

const std::vector<Point> kArea{{2, 1}, {32, 1}, {32, 9}, {2, 9}};

Sign of_feature(const QString& text, const Feature& f, void (*paint)(PaintContext&)) {
  return sign_of(
      text, [f](Miniature& m) { m.plan.site.features = {f}; }, paint);
}

bool has(const Plan& plan, FeatureKind kind) {
  return std::any_of(plan.site.features.begin(), plan.site.features.end(),
                     [&](const Feature& f) { return f.kind == kind; });
}

void add_lot(std::vector<Sign>& all) {
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

void add_field(std::vector<Sign>& all, const Layout& layout) {
  if (!layout.trenches.empty())
    all.push_back(sign_of(
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
    all.push_back(sign_of(
        QObject::tr("header, run: supply and return"),
        [](Miniature& m) {
          m.outcome.layout.run.line = {{0, 5}, {34, 5}};
        },
        paint_field));
  if (!layout.crossings.empty())
    all.push_back(sign_of(
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
          Labels unseen;  // its tag has no room
          PaintContext untagged{c.painter, c.plan, c.outcome, c.view, c.look, c.options, unseen};
          paint_crossings(untagged);
        }));
}

QString finding_words(Severity severity) {
  switch (severity) {
    case Severity::error:
      return QObject::tr("error: see the findings; shaded: where");
    case Severity::warning:
      return QObject::tr("warning: see the findings; shaded: where");
    case Severity::hint:
      break;
  }
  return QObject::tr("note: see the findings; shaded: where");
}

// As it lies on the plan: the mark, and the shading that shows at the ends of a trench.
Sign finding_sign(Severity severity) {
  return sign_of(
      finding_words(severity),
      [severity](Miniature& m) {
        Finding f;
        f.severity = severity;
        f.places.push_back(Polyline{Point{4, 5}, Point{30, 5}});
        m.outcome.findings = {f};
      },
      [](PaintContext& c) {
        paint_finding_glow(c);
        paint_findings(c);
      });
}

// What else the plan is marked with.
void add_marks(std::vector<Sign>& all, const Outcome& outcome) {
  all.push_back({QObject::tr("ground where coil trenches may lie"), [](PaintContext& c) {
                   c.painter.setPen(c.pen(c.look.tree, 0.5));
                   c.painter.setBrush(c.look.buildable);
                   c.painter.drawPolygon(c.line(kArea));
                 }});
  for (const Severity severity : {Severity::error, Severity::warning, Severity::hint}) {
    const auto marked = [&](const Finding& f) {
      return f.severity == severity && !f.accepted && !f.places.empty();
    };
    if (std::ranges::any_of(outcome.findings, marked)) all.push_back(finding_sign(severity));
  }
}

// A corner that is taped from.
void add_corner(std::vector<Sign>& all, const Outcome& outcome) {
  if (outcome.stake_out.corners.empty()) return;
  all.push_back({QObject::tr("building corner to tape from"), [](PaintContext& c) {
                   c.painter.setPen(Qt::NoPen);
                   c.painter.setBrush(c.look.text);
                   c.painter.drawRect(QRectF(c.at({12, 10}), c.at({22, 0})));
                   paint_text(c.painter, "A", c.font(1, QFont::Bold), c.look.ground, c.look.ground,
                              c.at({17, 5}), 0, 0);
                 }});
}

void add_utilities(std::vector<Sign>& all, const Plan& plan) {
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

void add_features(std::vector<Sign>& all, const Plan& plan) {
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

std::vector<Sign> signs(const Plan& plan, const Outcome& outcome) {
  std::vector<Sign> all;
  add_field(all, outcome.layout);
  add_utilities(all, plan);
  add_lot(all);
  add_features(all, plan);
  add_marks(all, outcome);
  add_corner(all, outcome);
  if (plan.site.entry)
    all.push_back(sign_of(
        QObject::tr("entry into the house"),
        [](Miniature& m) {
          m.plan.site.entry = EntryPoint{1, {17, 5}};
        },
        paint_houses));
  return all;
}

}  // namespace

double legend_height(const Plan& plan, const Outcome& outcome, double width) {
  return kHead + signs_height(signs(plan, outcome), width);
}

void paint_legend(QPainter& painter, const QRectF& room, const Plan& plan, const Outcome& outcome) {
  write(painter, room.topLeft() + QPointF(0, pt(9)), QObject::tr("LEGEND"), type(9, QFont::Bold));
  PaintOptions options;
  options.edge_lengths = false;
  paint_signs(painter, room.adjusted(0, kHead, 0, 0), signs(plan, outcome), options);
}

}  // namespace underlawn::sheet
