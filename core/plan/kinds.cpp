// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/kinds.h"

#include "plan/edits.h"

namespace underlawn::edit {

std::vector<FeatureKind> kinds_of_shape(FeatureShape shape) {
  std::vector<FeatureKind> kinds;
  for (int i = 0; i < kFeatureKinds; ++i)
    if (shape_of(static_cast<FeatureKind>(i)) == shape) kinds.push_back(static_cast<FeatureKind>(i));
  return kinds;
}

Plan with_kind(Plan plan, const std::vector<int>& feature_ids, FeatureKind kind) {
  for (int id : feature_ids) {
    const Feature* was = find_feature(plan.site, id);
    if (was == nullptr || was->kind == kind || shape_of(was->kind) != shape_of(kind)) continue;
    Feature now;
    now.id = id;
    now.kind = kind;
    now.name = was->name;
    now.points = was->points;
    now.note = was->note;
    Plan after = with_feature(without_feature(plan, id), std::move(now));
    if (find_feature(after.site, id) != nullptr) plan = std::move(after);
  }
  return plan;
}

}  // namespace underlawn::edit
