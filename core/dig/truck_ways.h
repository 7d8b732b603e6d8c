// SPDX-License-Identifier: GPL-3.0-or-later
// The trucks' ways where spoil is trucked off and brought back.
#pragma once

#include "dig/machine_ways.h"

namespace underlawn {

class TruckWays {
 public:
  TruckWays(const DigGround& ground, const DigWishes& how);

  // From the street to beside or behind the step, as near as the bucket reaches, keeping off what is open and
  // heaped, the step's own trench among it. The shortest; empty where there is none.
  Polyline way(Point from, const DigStep& step, const MachineWays::Standing& standing) const;

 private:
  std::vector<Point> stands(const DigStep& step) const;
  MachineWays ways_;
  double off_, reach_;
};

}  // namespace underlawn
