// SPDX-License-Identifier: GPL-3.0-or-later
// Areas of lots against worked surveying examples. Distances in feet; the plane does not mind the unit.
#include <gtest/gtest.h>

#include <cmath>

#include "plane/region.h"

using namespace underlawn;

// Area by coordinates, J. Mahun, Open Access Surveying Library, COGO chapter H: stations C, D, E, A, B as
// north and east. Its two sums of products are 2 190 612 and 1 909 624, half their difference 140 494 ft2
// (one product of the text is misprinted; its table is right). Exact: 140 493.107 ft2 = 3.22528 acres.
TEST(SurveyingAreas, FiveStationTraverseByCoordinates) {
  const Ring drawn = {
      {1259.97, 406.31}, {1489.47, 235.12}, {1126.40, 65.81}, {942.04, 317.89}, {1282.54, 675.32}};
  const Ring ring = checked_ring(drawn, "traverse").value();
  EXPECT_NEAR(area(ring), 140493.107, 0.001);
  EXPECT_NEAR(area(ring), (2190612 - 1909624) / 2.0, 1.0);
  EXPECT_NEAR(area(ring) / 43560, 3.22528, 1e-5);
  EXPECT_NEAR(area(region_of(ring)), 140493.107, 0.02);
}

// Square-cornered parcel (100,200), (180,250), (140,320), (60,270) ft of the same library: 0.1745 acre.
TEST(SurveyingAreas, FourCornerParcel) {
  const Ring ring = checked_ring({{100, 200}, {180, 250}, {140, 320}, {60, 270}}, "parcel").value();
  EXPECT_NEAR(area(ring), 7600, 1e-9);
  EXPECT_NEAR(area(ring) / 43560, 0.1745, 5e-5);
  // Two sides of hypot(80, 50) and two of hypot(40, 70); its centre is where the diagonals halve each other.
  EXPECT_NEAR(perimeter(ring), 2 * std::hypot(80, 50) + 2 * std::hypot(40, 70), 1e-9);
  EXPECT_NEAR(centroid(ring).x, 120, 1e-9);
  EXPECT_NEAR(centroid(ring).y, 260, 1e-9);
}

// An acre is 43 560 square feet: a furlong by a chain (66 ft x 660 ft).
TEST(SurveyingAreas, AcreIsAFurlongByAChain) {
  EXPECT_DOUBLE_EQ(area(Ring{{0, 0}, {660, 0}, {660, 66}, {0, 66}}), 43560);
}
