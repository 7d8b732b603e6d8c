// SPDX-License-Identifier: GPL-3.0-or-later
// A lot on which trenches are pushed about.
#pragma once

#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn::pushed {

// 60 m square, 3 m setbacks; trenches 1 m wide, 4 m apart, 2 m at their ends.
inline Site square() {
  Site s;
  for (Point p : Ring{{0, 0}, {60, 0}, {60, 60}, {0, 60}}) s.lot.push_back({p, 3});
  return s;
}

inline Wishes wishes() {
  Wishes w;
  w.trench_width = 1;
  w.spacing = 4;
  w.end_gap = 2;
  return w;
}

inline const GivenTrench kStart{{20, 30}, {40, 30}};

}  // namespace underlawn::pushed
