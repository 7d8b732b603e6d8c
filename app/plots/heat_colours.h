// SPDX-License-Identifier: GPL-3.0-or-later
// The colours of the ground's temperature, cold blue to warm brown by way of pale: told apart by all kinds of
// colour vision, and by lightness on either side of the middle.
#pragma once

#include <QImage>

#include "thermal/ground_map.h"

namespace underlawn {

struct HeatScale {
  double low = 0, high = 1;  // deg C
};

// share: 0 coldest to 1 warmest; beyond is held at the ends. Dark: dimmed, to be laid over dark ground by
// light.
QRgb heat_colour(double share, bool dark);

// The grid as an image of a pixel a place, its first row the lowest: `undisturbed` deg C less what the loop
// has taken by then.
QImage heat_image(const GroundGrid& grid, const KernelTable& heat, double undisturbed, const HeatScale& scale,
                  bool dark);

}  // namespace underlawn
