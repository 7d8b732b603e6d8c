// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/point_tool.h"

#include "plan/edits.h"
#include "site/clearances.h"

namespace underlawn {

QString PointTool::title() const {
  return kind_ == FeatureKind::well ? tr("Well") : tr("Tree");
}

QString PointTool::status() const {
  return kind_ == FeatureKind::well ? tr("Well: click where it is, or type x,y and Enter.")
                                    : tr("Tree: click its trunk, or type x,y and Enter. The circle is its "
                                         "root zone; set the trunk in the "
                                         "panel.");
}

Feature PointTool::model() const {
  Feature f;
  f.kind = kind_;
  for (const Feature& other : context_.plan().site.features)
    if (other.kind == kind_) f.trunk_diameter = other.trunk_diameter;
  return f;
}

void PointTool::place(Point p) {
  Feature f = model();
  f.id = edit::next_feature_id(context_.plan());
  f.points = {p};
  const int id = f.id;
  context_.commit(edit::with_feature(context_.plan(), std::move(f)),
                  kind_ == FeatureKind::well ? tr("Draw well") : tr("Draw tree"));
  context_.pick({{Selected::Kind::feature, id}});
}

void PointTool::paint(const ToolPaint& p) const {
  const QPointF at = p.view.to_device(p.pointer.at);
  p.painter.setPen(QPen(p.look.selection, 2));
  p.painter.drawLine(at - QPointF(5, 0), at + QPointF(5, 0));
  p.painter.drawLine(at - QPointF(0, 5), at + QPointF(0, 5));
  p.painter.setPen(QPen(p.look.selection, 1.4, Qt::DashLine));
  p.painter.setBrush(Qt::NoBrush);
  const Feature f = model();
  const double radius = kind_ == FeatureKind::tree ? root_zone_radius(context_.plan().site, f)
                                                   : trench_clearance(context_.plan().site, f);
  const double r = p.view.to_device(radius);
  if (r < 1e4) p.painter.drawEllipse(at, r, r);
}

}  // namespace underlawn
