// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/area_tool.h"

#include "plan/edits.h"

namespace underlawn {

namespace {

bool mostly_rectangles(FeatureKind kind) {
  return kind == FeatureKind::house || kind == FeatureKind::septic_tank || kind == FeatureKind::drain_field ||
         kind == FeatureKind::reserve_field || kind == FeatureKind::no_dig;
}

}  // namespace

AreaTool::AreaTool(ToolContext& context, FeatureKind kind)
    : OutlineTool(context, mostly_rectangles(kind)), kind_(kind) {}

QString AreaTool::title() const {
  QString name = QString::fromUtf8(kind_name(kind_));
  return name.replace(0, 1, name.front().toUpper());
}

void AreaTool::keep(std::vector<Point> points) {
  Feature f;
  f.id = edit::next_feature_id(context_.plan());
  f.kind = kind_;
  f.points = std::move(points);
  const int id = f.id;
  if (kind_ == FeatureKind::no_dig || kind_ == FeatureKind::easement) f.may_cross = false;
  context_.commit(edit::with_feature(context_.plan(), std::move(f)),
                  tr("Draw %1").arg(QString::fromUtf8(kind_name(kind_))));
  context_.pick({{Selected::Kind::feature, id}});
  if (kind_ == FeatureKind::house) context_.back_to_select();
}

}  // namespace underlawn
