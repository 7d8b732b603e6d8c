// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "house/heat_pump_file.h"

namespace underlawn {

const std::vector<HeatPump>& heat_pump_presets() {
  static const std::vector<HeatPump> units = [] {
    std::vector<HeatPump> out;
    const auto add = [&](double tons, const char* name) {
      out.push_back(scaled(generic_heat_pump(), tons / 3.0));
      out.back().name = name;
    };
    add(2, mark("Generic 2 ton unit (typical numbers, no maker's)"));
    add(3, mark("Generic 3 ton unit (typical numbers, no maker's)"));
    add(4, mark("Generic 4 ton unit (typical numbers, no maker's)"));
    add(5, mark("Generic 5 ton unit (typical numbers, no maker's)"));
    return out;
  }();
  return units;
}

}  // namespace underlawn
