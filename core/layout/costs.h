// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stop_token>

#include "layout/candidates.h"

namespace underlawn {

// For every restriction, how many more trenches than `fits` would be found without all of it that can
// be taken away (lifted.h), dearest first, those that cost nothing left out. Tries the best bearings, and the
// first few of all.
std::vector<RestrictionCost> restriction_costs(const Search& search, const Keeping& keeping,
                                               std::vector<Bearing> best, const std::vector<Bearing>& all,
                                               int fits, const std::stop_token& stop);

// The most trenches found to fit, up to search.most: a look at the bearings that follow something drawn and
// at some between, a full search of the two best.
int most_that_fit(const Search& search, const Keeping& keeping, const std::vector<Bearing>& bearings,
                  const std::stop_token& stop);

}  // namespace underlawn
