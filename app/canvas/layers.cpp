// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/layers.h"

namespace underlawn {

Plan shown_part(Plan plan, const Layers& layers) {
  if (!layers.shows(FeatureKind::house)) plan.site.entry.reset();
  std::erase_if(plan.site.features, [&](const Feature& f) { return !layers.shows(f.kind); });
  if (!layers.loop) plan.wishes.locked.clear();
  if (!layers.dimensions) plan.dimensions.clear();
  return plan;
}

}  // namespace underlawn
