// SPDX-License-Identifier: GPL-3.0-or-later
// All that may keep a further trench out of a lot with its layout.
#pragma once

#include "layout/over_place.h"
#include "layout/zones.h"

namespace underlawn {

struct Obstacle {
  enum class Kind {
    lot_line,     // beyond it is no ground of the lot
    thing,        // what stands or lies on the lot
    restriction,  // a setback or clearance; a no-dig area or closed side as a whole
    trench,
    header,
    run
  } kind = Kind::lot_line;
  int index = 0;  // into the ground's restrictions, the layout's trenches, the header's legs
  std::vector<std::size_t> serves;  // header: trenches that it leads to, and none but those need it
};

// In two lists of the same order. What is of the ground comes first. Weights rise from header and run, which
// a search lays anew, over trenches and the owner's wishes to setbacks and clearances, and from there to what
// cannot be moved.
struct Obstacles {
  std::vector<Obstacle> what;
  std::vector<InWay> in_way;
  std::size_t of_ground = 0;

  bool of_lot(std::size_t i) const { return i < of_ground; }
  // Whether it is of no use once all the trenches that are hit are gone.
  bool goes_with(std::size_t i, const std::vector<char>& hit) const;
};

inline constexpr double kFixed = 1e4;  // from this weight on it cannot be moved

// `ground` of the site with its closed sides. Trenches are kept off as the pair rule has it for a trench at
// that angle.
Obstacles obstacles_of(const Site& drawn, const Site& with_closed, const Confines& ground,
                       const Wishes& wishes, const Layout& layout, double angle);

}  // namespace underlawn
