// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/surface_cover.h"

#include "base/say.h"

namespace underlawn {

const std::vector<SurfaceCover>& surface_covers() {
  static const std::vector<SurfaceCover> covers = {
      {mark("Bare soil, windy"), 0.04}, {mark("Short grass"), 0.07}, {mark("Long grass"), 0.12}};
  return covers;
}

}  // namespace underlawn
