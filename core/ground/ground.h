// SPDX-License-Identifier: GPL-3.0-or-later
// The ground as digging meets it. (Its thermal side joins here with the temperatures.)
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace underlawn {

// Soil classes of 29 CFR 1926 Subpart P, Appendix A.
enum class SoilType { stable_rock, type_a, type_b, type_c };

struct Ground {
  SoilType soil = SoilType::type_c;  // unless a competent person classed it better
  double swell = 0.25;               // loose volume = bank x (1 + swell); common earth, Nunnally, Table 2-5
  double shrinkage = 0.10;           // compacted volume = bank x (1 - shrinkage); same
  double repose =
      0.6457718232379019;    // rad, at which spoil lies; 37 deg, moist earth, Nunnally (from memory)
  double frost_depth = 0.9;  // m, local
  bool operator==(const Ground&) const = default;
};

std::string soil_name(SoilType soil);

// What the designer can pick instead of typing swell, shrinkage and repose. Moist unless the name says
// otherwise.
struct EarthPreset {
  std::string_view name;
  double swell;
  double shrinkage;  // below 0 where earth never packs as tight again as it lay
  double repose;     // rad
  std::string_view source;
};
const std::vector<EarthPreset>& earth_presets();  // common earth, Ground's own defaults, first

}  // namespace underlawn
