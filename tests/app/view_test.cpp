// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/view.h"

#include <gtest/gtest.h>

using namespace underlawn;

TEST(View, PointComesBackFromTheDeviceUnchanged) {
  const View view{.centre = {12, -7}, .scale = 8.5, .size = {640, 400}, .turn = 0.4};
  const Point p = view.to_lot(view.to_device(Point{30.25, 4.5}));
  EXPECT_NEAR(p.x, 30.25, 1e-9);
  EXPECT_NEAR(p.y, 4.5, 1e-9);
}

TEST(View, FitShowsEveryCornerInsideTheMargin) {
  const View view = fit_view({{-10, 5}, {90, 45}}, {800, 600}, 40, 0.3);
  for (Point corner : {Point{-10, 5}, Point{90, 5}, Point{90, 45}, Point{-10, 45}}) {
    const QPointF d = view.to_device(corner);
    EXPECT_GE(d.x(), 39.999);
    EXPECT_LE(d.x(), 760.001);
    EXPECT_GE(d.y(), 39.999);
    EXPECT_LE(d.y(), 560.001);
  }
}
