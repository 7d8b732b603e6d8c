// SPDX-License-Identifier: GPL-3.0-or-later
// What a trench that is pushed has met.
#pragma once

#include "layout/why.h"

namespace underlawn {

// What a trench at `at`, as slid() gives it, may not cross on its way on to `to`: setbacks, clearances,
// closed sides, the lot line (as the setback of its edge) and `others` that are locked, as reasons of the
// kinds covered and too_near (Reason::trench counts `others` from 1). Empty where it is there, or where
// nothing is in its way.
std::vector<Reason> stopped_by(const Site& site, const Wishes& wishes, const std::vector<Trench>& others,
                               const GivenTrench& at, const GivenTrench& to);

}  // namespace underlawn
