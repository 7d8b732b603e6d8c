// SPDX-License-Identifier: GPL-3.0-or-later
// What keeps trenches out, as capsules and areas with their owners.
#pragma once

#include <vector>

#include "layout/capsule.h"
#include "layout/layout.h"

namespace underlawn {

// Everything a coil trench must keep off. Exact: no rounding of corners.
struct Confines {
  Ring lot;
  std::vector<Capsule> capsules;
  std::vector<int> owner;       // of each capsule: an index into restrictions
  std::vector<Ring> areas;      // features that are areas; nothing may lie inside
  std::vector<int> area_owner;  // index into restrictions
  std::vector<Restriction> restrictions;
};

Confines trench_ground(const Site& site);
// The same for header and run: without what they may cross, and with the clearances of the run. A little
// wider than asked, so that what keeps off it lies inside the region that header and run are routed in.
Confines conduit_ground(const Site& site);
// Inside the lot and outside every area; meant for points that no capsule covers.
bool is_open(const Confines& ground, Point p);

// What lies within the setbacks of the lot; nothing where they are no lengths.
Region setback_bands(const Site& site);
// buildable_region and routable_region, with those made before.
Result<Region> buildable_region(const Site& site, const Region& bands);
Result<Region> routable_region(const Site& site, const Region& bands);

// The feature's own outline, and what lies within `by` of it.
Region grown_feature(const Feature& f, double by);

}  // namespace underlawn
