// SPDX-License-Identifier: GPL-3.0-or-later
// The run's bends where they are cheapest, after the whole is laid.
#pragma once

#include "layout/whole.h"

namespace underlawn {

// Bends of the run shifted, left out or put in where that makes it cheaper and is legal beside all that lies;
// its ends stay, and one that holds a coil or is held itself stays as it is. `conduits` without the ground of
// any trench.
void shift_run(const Site& site, const Wishes& wishes, const Conduits& conduits, Whole& whole);

// Field and locked trenches of a whole.
Arrangement all_trenches(const Whole& whole);

// The whole by another run, where that is legal beside all that lies, leaves no more heads unjoined, has no
// tighter bends and crosses no more of the header. `square`: its crossings of utilities are made square
// first.
std::optional<Whole> by_another_run(const Site& site, const Wishes& wishes, const Whole& whole, Polyline run,
                                    bool square);

}  // namespace underlawn
