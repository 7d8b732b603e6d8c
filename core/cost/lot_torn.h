// SPDX-License-Identifier: GPL-3.0-or-later
// What digging does to the surface of the lot.
#pragma once

#include "dig/dig.h"
#include "layout/amounts.h"
#include "layout/layout.h"
#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn {

struct LotTorn {
  double pavement = 0;  // m2 of drives cut: the top of header and run trench inside them
  double lawn = 0;      // m2 of lot torn up: trenches, spoil, room to work, what overlaps counted once, less
                        // drives and houses
  bool operator==(const LotTorn&) const = default;
};

// Along every trench a strip as wide as torn_width of layout/amounts.h is torn; with sloped sides the top is
// wider and the heap larger.
LotTorn lot_torn(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes);

}  // namespace underlawn
