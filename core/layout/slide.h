// SPDX-License-Identifier: GPL-3.0-or-later
// A trench pushed by the pointer until something stops it.
#pragma once

#include <vector>

#include "field/trench.h"
#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn {

// The furthest legal place of a trench on the straight way of its ends (and of its bends, where both places
// have as many; else `to`'s bends are taken) from `from` to `to`; both ends may move, or one. What is legal:
// inside the lot, off setbacks, clearances and closed sides, and the pair rule against those of `others` that
// are locked. It stops within 1 mm of what it meets, and then goes on along that as far as this brings it
// nearer to `to`. What lies between the two places is passed over where there is a legal place beyond it.
// From a place that breaks a rule already, `to` is given back as it is; so is `from` where `to` is no place
// or too short for a trench. Takes a tenth of a millisecond, half of one where a single end goes along what
// it meets; some where it touches what it keeps off when taken hold of.
GivenTrench slid(const Site& site, const Wishes& wishes, const std::vector<Trench>& others,
                 const GivenTrench& from, const GivenTrench& to);

}  // namespace underlawn
