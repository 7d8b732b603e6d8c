// SPDX-License-Identifier: GPL-3.0-or-later
// Lots as people have them: rectangles, corner cuts, trapezoids, L shapes, odd outlines; turned; with house,
// septic, well, trees, utilities, drive and easement that overlap each other and the lot line now and then.
#pragma once

#include <cstdint>

#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn::sample {

struct RandomLot {
  Site site;
  Wishes wishes;
};

RandomLot random_lot(std::uint64_t seed);

}  // namespace underlawn::sample
