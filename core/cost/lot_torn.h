// SPDX-License-Identifier: GPL-3.0-or-later
// What digging does to the surface of the lot.
#pragma once

#include "dig/dig.h"
#include "ground/ground.h"
#include "layout/layout.h"
#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn {

// Spoil lies no nearer to the edge of a trench: 2 ft, 29 CFR 1926.651(j)(2). m.
inline constexpr double kSpoilEdge = 0.6096;

struct LotTorn {
  double pavement = 0;  // m2 of drives cut: the top of header and run trench inside them
  double lawn = 0;      // m2 cut or lain on by spoil, what overlaps counted once, less drives and houses
  bool operator==(const LotTorn&) const = default;
};

// Spoil is taken to lie on both sides alike: along every trench a strip of top width + edge + heap is torn.
LotTorn lot_torn(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes,
                 const Ground& ground, bool sloped);

}  // namespace underlawn
