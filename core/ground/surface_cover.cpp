// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/surface_cover.h"

namespace underlawn {

const std::vector<SurfaceCover>& surface_covers() {
  static const std::vector<SurfaceCover> covers = {
      {"Bare soil, windy", 0.04}, {"Short grass", 0.07}, {"Long grass", 0.12}};
  return covers;
}

}  // namespace underlawn
