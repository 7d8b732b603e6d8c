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
  return f;
}

void UtilityTool::keep(std::vector<Point> points) {
  Feature f = model();
  f.id = edit::next_feature_id(context_.plan());
  f.points = std::move(points);
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
