// SPDX-License-Identifier: GPL-3.0-or-later
// What a search starts from: the lot with its closed sides, what is locked, the start of the run.
#pragma once

#include "layout/candidates.h"
#include "layout/held.h"
#include "layout/longest_rows.h"
#include "site/terrain.h"

namespace underlawn {

struct Setting {
  Setting(const Site& drawn, const Wishes& asked, const Coil& coil, const Region& routable);
  Setting(const Setting&) = delete;

  Site site;                      // with closed sides as features
  Wishes wishes;                  // as asked, its circuits without the locked ones
  std::vector<Trench> locked;     // numbered as the wishes have them
  Held held;                      // their middle lines, and the run as far as its last chosen place
  Conduits conduits;              // off held coils; starting from there
  Terrain terrain;                // known only where floors are to be level
  std::vector<Trouble> troubles;  // of what is held: not there, no trench, not to be reached

  Keeping keeping() const { return {site, wishes, held, nullptr, terrain.is_known() ? &terrain : nullptr}; }

 private:
  void lock(const Wishes& asked, const Coil& coil);
  void start_run(const Site& drawn);
};

// One field of trenches looked for, round what is held.
class FieldSearch {
 public:
  // For up to `wanted` trenches; `one_fewer`: also for one less, where the run could hold a coil.
  FieldSearch(const Keeping& keeping, const Coil& coil, int wanted, bool one_fewer);
  FieldSearch(const FieldSearch&) = delete;

  Candidates candidates(const std::stop_token& stop) const;
  int most(const std::stop_token& stop) const;  // a quicker count of what fits, capped three above `wanted`
  // Trenches of free length: the most metres of the best few bearings, most first. Not on a held header line.
  std::vector<Arrangement> longest(const LengthBounds& bounds, const std::stop_token& stop) const;
  // `best`: as the candidates name them.
  std::vector<RestrictionCost> costs(const std::vector<Bearing>& best, int fits,
                                     const std::stop_token& stop) const;

 private:
  std::vector<Arrangement> on_line() const;

  Keeping keeping_;
  double length_;
  Confines ground_, for_header_;
  Approach approach_;
  Search search_;
  std::vector<Bearing> bearings_;
};

}  // namespace underlawn
