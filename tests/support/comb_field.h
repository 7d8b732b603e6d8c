// SPDX-License-Identifier: GPL-3.0-or-later
// Coil trenches side by side to the east of a header along x = 0, heads `spacing` apart, a run of 20 m from
// the west.
#pragma once

#include "layout/layout.h"

namespace underlawn {

inline Layout comb_field(int trenches, double spacing, double width, double depth) {
  Layout layout;
  for (int i = 0; i < trenches; ++i) {
    Trench t;
    t.number = i + 1;
    t.head = {0, spacing * i};
    t.end = {30, spacing * i};
    t.width = width;
    t.depth = depth;
    t.coil.coil_length = 240;
    layout.trenches.push_back(t);
  }
  const double across = spacing * (trenches - 1);
  if (across > 0) layout.header = {{{{0, 0}, {0, across}}}, across};
  layout.run = {{{-20, 0}, {0, 0}}, 20};
  return layout;
}

}  // namespace underlawn
