// SPDX-License-Identifier: GPL-3.0-or-later
// The trucks' ways where spoil is trucked off and brought back.
#pragma once

#include "dig/machine_ways.h"

namespace underlawn {

class TruckWays {
 public:
  TruckWays(const DigGround& ground, const DigWishes& how);

  // From the street to where the last bucket is loaded: behind the step's end, to which the machine backs, or
  // beside it, as near as the bucket reaches; only where neither can be come to, beside or before the rest of
  // it. Keeps off what is open and heaped, the step's own trench among it. The shortest; empty where there is
  // none.
  Polyline way(Point from, const DigStep& step, const MachineWays::Standing& standing) const;

 private:
  std::vector<Point> stands(const DigStep& step, bool at_end) const;
  MachineWays ways_;
  double off_, reach_;
};

}  // namespace underlawn
