// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/heat_pump_file.h"

namespace underlawn {

const std::vector<HeatPump>& heat_pump_presets() {
  static const std::vector<HeatPump> units = [] {
    std::vector<HeatPump> out;
    for (int tons : {2, 3, 4, 5}) {
      out.push_back(scaled(generic_heat_pump(), tons / 3.0));
      out.back().name = "Generic " + std::to_string(tons) + " ton unit (typical numbers, no maker's)";
    }
    return out;
  }();
  return units;
}

}  // namespace underlawn
