// SPDX-License-Identifier: GPL-3.0-or-later
#include <QObject>
#include <algorithm>

#include "plan/clearings.h"
#include "sheets/lot_picture.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

// Lines in the ground and pavement are the crew's care.
bool asked_for(const Feature& f) {
  return f.kind != FeatureKind::drive && f.kind != FeatureKind::utility && f.kind != FeatureKind::easement;
}

void take_nearer(std::vector<Loved>& all, const Loved& one) {
  const auto known = std::ranges::find(all, one.feature_id, &Loved::feature_id);
  if (known == all.end())
    all.push_back(one);
  else if (one.distance < known->distance)
    *known = one;
}

}  // namespace

std::vector<Loved> loved(const Plan& plan, const Outcome& outcome) {
  std::vector<Loved> all;
  for (const Clearing& c : clearings(plan, outcome)) {
    const Feature* f = c.feature_id == 0 ? nullptr : find_feature(plan.site, c.feature_id);
    if (f != nullptr && !asked_for(*f)) continue;
    Loved one{c.thing, c.feature_id, c.line, c.measured, c.required, 0};
    if (f == nullptr) one.name = QObject::tr("Lot line").toStdString();
    if (f != nullptr && f->kind == FeatureKind::tree) one.roots = root_zone_radius(plan.site, *f);
    take_nearer(all, one);
  }
  std::ranges::stable_sort(all, {}, &Loved::distance);
  return all;
}

}  // namespace underlawn
