// SPDX-License-Identifier: GPL-3.0-or-later
// Latitude and longitude on the plan, by the PROJ library.
#pragma once

#include <memory>

#include "base/result.h"
#include "site/map_place.h"

namespace underlawn {

// The transverse Mercator projection that MapPlace describes.
class EarthFrame {
 public:
  // `north`: Site::north. Refuses a place beyond 89.9 degrees of latitude.
  static Result<EarthFrame> at(const MapPlace& place, double north);

  // Degrees, WGS 84. Refuses what is not on the earth, and what is farther than kLargestPlan from the place.
  Result<Point> to_plan(double latitude, double longitude) const;
  // Latitude and longitude, degrees, of a point of the plan.
  Result<std::pair<double, double>> to_earth(Point at) const;

 private:
  struct Library;
  EarthFrame() = default;
  std::shared_ptr<Library> library_;
  MapPlace place_;
  double north_ = 0;
};

// One projection by its PROJ text, "+proj=utm +zone=32 +ellps=WGS84": east and north in m of a place in
// degrees.
Result<Point> projected(const char* projection, double latitude, double longitude);

}  // namespace underlawn
