// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/ground.h"

#include <numbers>

#include "base/say.h"

namespace underlawn {

std::string soil_name(SoilType soil) {
  switch (soil) {
    case SoilType::stable_rock:
      return say("stable rock");
    case SoilType::type_a:
      return say("Type A");
    case SoilType::type_b:
      return say("Type B");
    case SoilType::type_c:
      return say("Type C");
  }
  return say("unknown");
}

const std::vector<EarthPreset>& earth_presets() {
  constexpr double degree = std::numbers::pi / 180;
  constexpr std::string_view nunnally =
      mark("Nunnally, Construction Methods and Management, Tables 2-5 and 2-6 (repose from memory)");
  constexpr std::string_view army =
      mark("US Army FM 5-434, Table 1-1 (from memory); repose: Nunnally, Table 2-6 (from memory)");
  static const std::vector<EarthPreset> presets = {
      {mark("common earth"), 0.25, 0.10, 37 * degree, nunnally},
      {mark("common earth, dry"), 0.25, 0.10, 32 * degree, nunnally},
      {mark("sand and gravel"), 0.12, 0.12, 37 * degree, nunnally},
      {mark("sand"), 0.11, 0.05, 37 * degree, army},
      {mark("sand, dry"), 0.11, 0.05, 25 * degree, army},
      {mark("clay"), 0.30, 0.20, 35 * degree, nunnally},
      {mark("clay, tight"), 0.43, 0.10, 35 * degree, army},
      {mark("blasted rock"), 0.50, -0.30, 37 * degree, nunnally},
  };
  return presets;
}

}  // namespace underlawn
