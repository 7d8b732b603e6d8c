// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/utility_tags.h"

#include "canvas/look.h"

namespace underlawn {

QString utility_tag(const Site& site, const Feature& utility) {
  int before = 0, all = 0;
  for (const Feature& f : site.features) {
    if (f.kind != FeatureKind::utility || f.utility != utility.utility) continue;
    ++all;
    before += f.id < utility.id ? 1 : 0;
  }
  const QString letter(utility_letter(utility.utility));
  return all > 1 ? letter + QString::number(before + 1) : letter;
}

QVector<qreal> utility_dashes(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::electric:
      return {14, 4};
    case UtilityKind::gas:
      return {20, 4, 5, 4};
    case UtilityKind::communication:
      return {6, 4};
    case UtilityKind::water:
      return {24, 5};
    case UtilityKind::sewer:
      return {30, 4, 4, 4, 4, 4};
    case UtilityKind::reclaimed:
      return {10, 3, 3, 3};
  }
  return {10, 4};
}

}  // namespace underlawn
