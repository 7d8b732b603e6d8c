// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/utility_tool.h"

#include "plan/edits.h"

namespace underlawn {

Feature UtilityTool::model() const {
  Feature f;
  f.kind = FeatureKind::utility;
  for (const Feature& other : context_.plan().site.features) {
    if (other.kind != FeatureKind::utility) continue;
    f.utility = other.utility;
    f.depth = other.depth;
    f.may_cross = other.may_cross;
  }
  if (kind_) f.utility = *kind_;
  return f;
}

QString UtilityTool::status() const {
  return tr("Carries %1 (K changes it). %2")
      .arg(QString::fromUtf8(utility_name(model().utility)), PathTool::status());
}

bool UtilityTool::key_press(QKeyEvent& key) {
  if (key.key() != Qt::Key_K || key.modifiers() != Qt::NoModifier) return PathTool::key_press(key);
  kind_ = static_cast<UtilityKind>((static_cast<int>(model().utility) + 1) % 6);
  return true;
}

void UtilityTool::keep(std::vector<Point> points) {
  Feature f = model();
  f.id = edit::next_feature_id(context_.plan());
  f.points = std::move(points);
  kind_.reset();
  const int id = f.id;
  context_.commit(edit::with_feature(context_.plan(), std::move(f)), tr("Draw a utility line"));
  context_.pick({{Selected::Kind::feature, id}});
  context_.say(
      tr("Utility line drawn. Set what it carries and its depth in the panel; have it located before "
         "anyone digs."));
}

QString UtilityTool::first_hint() const {
  return tr("Utility line: click where it begins, or type x,y and Enter.");
}

}  // namespace underlawn
