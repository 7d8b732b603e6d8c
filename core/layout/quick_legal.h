// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a straight coil trench may lie somewhere, asked thousands of times. A little stricter than
// legality.h, so that what is free here is proved there.
#pragma once

#include <vector>

#include "layout/wishes.h"
#include "layout/zones.h"

namespace underlawn {

class QuickLegal {
 public:
  // `others`: middle lines of trenches the pair rule holds against. `conduits`: lines of header and run that
  // trenches keep off. `site` with its closed sides as features.
  QuickLegal(const Site& site, const Wishes& wishes, std::vector<Polyline> others = {},
             std::vector<Polyline> conduits = {});

  bool free(const Segment& trench) const;
  // Directions, unit, in which a trench could go on past what it touches here.
  void add_ways_past(const Segment& trench, std::vector<Point>& ways) const;
  const Confines& ground() const { return ground_; }

 private:
  bool keeps_off(const Segment& trench, const Ring& floor, const Polyline& other) const;
  bool off_conduits(const Ring& floor) const;
  double near_enough() const;  // m between middle lines, at which the pair rule must be asked

  const Wishes& wishes_;
  Confines ground_;
  std::vector<Polyline> others_, conduits_;
};

}  // namespace underlawn
