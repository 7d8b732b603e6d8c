// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/setup_for.h"

#include <QFileInfo>

#include "language/language.h"

namespace underlawn {

Paper usual_paper(const Plan& plan) {
  return plan.units == UnitSystem::us ? Paper::letter : Paper::a4;
}

SheetSetup setup_for(const Plan& plan, const QString& plan_path) {
  const SheetWishes& wishes = plan.sheets;
  SheetSetup setup;
  setup.paper = usual_paper(plan);
  if (wishes.scale && *wishes.scale >= 1 && *wishes.scale <= kLargestSheetScale) setup.scale = wishes.scale;
  if (find_language(wishes.language) != nullptr) setup.language = wishes.language;
  setup.units = wishes.units;
  setup.page_a_trench = wishes.page_a_trench;
  if (!plan_path.isEmpty()) setup.folder = QFileInfo(plan_path).absolutePath();
  return setup;
}

}  // namespace underlawn
