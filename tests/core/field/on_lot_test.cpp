// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "field/coil.h"
#include "field/trench.h"
#include "plane/region.h"

namespace underlawn {
namespace {

Trench bent() {
  Trench t;
  t.head = {0, 0};
  t.bends = {{15, 0}};
  t.end = {15, 15};
  t.width = 1;
  CoilRequest r;
  r.unknown = CoilUnknown::coil_length;
  r.loop_diameter = 0.9;
  r.pitch = 0.4;
  r.trench_length = 30;
  t.coil = solve_coil(r).value();
  return t;
}

}  // namespace

TEST(OnLot, OfAStraightTrenchIsPlainlyTurnedAndMoved) {
  Trench t = bent();
  t.bends.clear();
  t.end = {0, 30};
  const Polyline laid = on_lot(t, {{1, 0.2}, {29, -0.3}});
  EXPECT_NEAR(distance(laid[0], {-0.2, 1}), 0, 1e-12);
  EXPECT_NEAR(distance(laid[1], {0.3, 29}), 0, 1e-12);
}

TEST(OnLot, TheCoilOfABentTrenchStaysOnItsFloorFromEndToEnd) {
  const Trench t = bent();
  const Polyline laid = on_lot(t, coil_path(t.coil, 32));
  const Ring floor = floor_of(t);
  double longest = 0;
  for (std::size_t i = 0; i < laid.size(); ++i) {
    EXPECT_LT(distance(floor, laid[i]), 0.02) << laid[i].x << ", " << laid[i].y;
    if (i > 0) longest = std::max(longest, distance(laid[i - 1], laid[i]));
  }
  EXPECT_NEAR(length(laid) / t.coil.coil_length, 1, 0.02);
  EXPECT_NEAR(distance(laid.front(), t.head), 0, 1e-9);
}

TEST(OnLot, AStraightPipeTurnsAtTheBend) {
  const Polyline laid = on_lot(bent(), {{0, 0}, {30, 0}});
  double nearest = 1e9;
  for (Point p : laid) nearest = std::min(nearest, distance(p, {15, 0}));
  EXPECT_NEAR(nearest, 0, 1e-9);
  EXPECT_NEAR(length(laid), 30, 1e-9);
}

}  // namespace underlawn
