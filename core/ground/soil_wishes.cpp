// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/soil_wishes.h"

namespace underlawn {

Result<SoilThermal> soil_thermal(const SoilWishes& w) {
  if (w.source == SoilSource::typed) return w.typed;
  const auto k = conductivity(w.matter, w.model);
  if (!k) return refuse(k.error());
  return SoilThermal{*k, heat_capacity(w.matter)};
}

}  // namespace underlawn
