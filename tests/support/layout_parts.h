// SPDX-License-Identifier: GPL-3.0-or-later
// What the tests of the layout put their lots together from.
#pragma once

#include "field/coil.h"
#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn::sample {

// A coil that lies in a trench of that length, m; eight metres of pipe to one of trench.
inline Coil coil_of(double trench_length) {
  Coil c;
  c.trench_length = trench_length;
  c.coil_length = trench_length * 8;
  return c;
}

inline Ring box(double left, double bottom, double right, double top) {
  return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

inline Feature feature(int id, FeatureKind kind, std::vector<Point> points) {
  Feature f;
  f.id = id;
  f.kind = kind;
  f.points = std::move(points);
  return f;
}

// So many circuits, none of them in the run's trench.
inline Wishes wishes(int circuits) {
  Wishes w;
  w.circuits = circuits;
  w.coil_in_run = false;
  return w;
}

}  // namespace underlawn::sample
