// SPDX-License-Identifier: GPL-3.0-or-later
// Quantities a person types and reads. Inside the program every value is SI; units exist only here.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace underlawn {

enum class UnitSystem { metric, us };

// The kind of a number. Its SI unit and the suffix of its key in files follow from it.
enum class Quantity {
  count,                   // -            no suffix
  ratio,                   // - (0..1)     "_ratio"
  length,                  // m            "_m"
  diameter,                // m            "_m"; read and shown in mm or inches, as pipe and trunks are
  area,                    // m2           "_m2"
  volume,                  // m3           "_m3"; earth: m3 or cubic yards
  fluid_volume,            // m3           "_m3"; liquid: litres or US gallons
  angle,                   // rad          "_rad"; shown in degrees
  slope,                   // horizontal per vertical   "_h_per_v"
  duration,                // s            "_s"
  velocity,                // m/s          "_m_s"
  flow,                    // m3/s         "_m3_s"; L/s or gpm
  pressure,                // Pa           "_pa"; kPa or psi
  head,                    // m of liquid  "_m"; m or ft
  temperature,             // deg C        "_c"
  temperature_difference,  // K "_k"
  power,                   // W            "_w"; kW or Btu/h
  energy,                  // J            "_j"; kWh
  mass,                    // kg           "_kg"
  density,                 // kg/m3        "_kg_m3"
  conductivity,            // W/(m K)      "_w_mk"
  resistance,              // m K/W        "_mk_w"
  surface_resistance,      // m2 K/W       "_m2k_w"
  u_value,                 // W/(m2 K)     "_w_m2k"
  heat_capacity,           // J/(m3 K)     "_j_m3k"; of soil, by volume
  diffusivity,             // m2/s         "_m2_s"; of heat
  money,                   // currency     "_money"
};

// "_m", "_m3", ... or "" for count.
std::string_view key_suffix(Quantity q);

// Reads what a person typed. Takes the unit as typed (`6'-3 1/2"`, `1.9 m`, `38 gpm`, `30 in`, `45 deg`), or
// `system`'s own unit where none is given; `.` and `,` both as the decimal mark; sums and products of such
// terms
// (`12' + 3 in`, `2*1.5 m`). Error: names the text, what could not be read and an example that can.
// Behind feet a number without a unit is inches, and a hyphen joins (`6'-3`), unless blanks on both sides
// make it a minus (`6' - 3 in` is 5'-9"). A plain number in a sum has the system's own unit. Areas and
// volumes may be typed as products of lengths (`30 ft * 15 ft`). In the US system `1,234` is refused, for it
// can mean two things.
Result<double> parse_quantity(Quantity q, std::string_view text, UnitSystem system);

// How fine a length is shown: feet-inches to a sixteenth or to the whole inch; metres to mm or cm.
enum class Fineness { coarse, normal, fine };

// Writes a value in `system`'s unit with the unit shown, so that parse_quantity reads it back to within half
// the last shown place. Not-a-number and infinities are shown as a dash.
std::string print_quantity(Quantity q, double si, UnitSystem system, Fineness fineness = Fineness::normal);

}  // namespace underlawn
