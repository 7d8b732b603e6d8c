// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "plan/clearings.h"
#include "sheets/lot_picture.h"

namespace underlawn {

std::vector<Loved> loved(const Plan& plan, const Outcome& outcome) {
  std::vector<Loved> all;
  for (const Clearing& c : clearings(plan, outcome)) {
    const Feature* f = c.feature_id == 0 ? nullptr : find_feature(plan.site, c.feature_id);
    if (f == nullptr) continue;
    if (f->kind != FeatureKind::tree && f->kind != FeatureKind::no_dig && f->kind != FeatureKind::well)
      continue;
    const auto known = std::ranges::find(all, f->id, &Loved::feature_id);
    if (known == all.end())
      all.push_back({c.thing, f->id, c.line, c.measured, c.required});
    else if (c.measured < known->distance)
      *known = {c.thing, f->id, c.line, c.measured, c.required};
  }
  std::ranges::stable_sort(all, {}, &Loved::distance);
  return all;
}

}  // namespace underlawn
