// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/shown_unit.h"

#include "base/units.h"

namespace underlawn {

std::string with_shown_unit(Quantity quantity, const QString& typed, double shown, UnitSystem units) {
  bool alone = false;
  QString(typed).replace(',', '.').toDouble(&alone);
  const bool unit = alone && quantity == Quantity::duration;
  return typed.toStdString() + std::string(unit ? shown_unit(quantity, units, shown).text : "");
}

}  // namespace underlawn
