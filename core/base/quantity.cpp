// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/quantity.h"

namespace underlawn {

std::string_view key_suffix(Quantity q) {
  switch (q) {
    case Quantity::count:
      return "";
    case Quantity::ratio:
      return "_ratio";
    case Quantity::length:
    case Quantity::diameter:
    case Quantity::head:
      return "_m";
    case Quantity::area:
      return "_m2";
    case Quantity::volume:
    case Quantity::fluid_volume:
      return "_m3";
    case Quantity::angle:
      return "_rad";
    case Quantity::slope:
      return "_h_per_v";
    case Quantity::duration:
      return "_s";
    case Quantity::velocity:
      return "_m_s";
    case Quantity::flow:
      return "_m3_s";
    case Quantity::pressure:
      return "_pa";
    case Quantity::temperature:
      return "_c";
    case Quantity::temperature_difference:
      return "_k";
    case Quantity::power:
      return "_w";
    case Quantity::energy:
      return "_j";
    case Quantity::mass:
      return "_kg";
    case Quantity::density:
      return "_kg_m3";
    case Quantity::conductivity:
      return "_w_mk";
    case Quantity::resistance:
      return "_mk_w";
    case Quantity::surface_resistance:
      return "_m2k_w";
    case Quantity::u_value:
      return "_w_m2k";
    case Quantity::heat_capacity:
      return "_j_m3k";
    case Quantity::diffusivity:
      return "_m2_s";
    case Quantity::money:
      return "_money";
  }
  return "";
}

}  // namespace underlawn
