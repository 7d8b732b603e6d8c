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
  double lawn = 0;      // m2 of lot torn up, what overlaps counted once, less drives and houses
  bool operator==(const LotTorn&) const = default;
};

// m2 of drives cut, as LotTorn has it.
double pavement_cut(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes);

// m2 of lawn where no order of digging is known: along every trench a strip as wide as torn_width of
// layout/amounts.h, for trench, spoil and room to work; with sloped sides the top is wider and the heap
// larger.
double lawn_in_strips(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes);

}  // namespace underlawn
