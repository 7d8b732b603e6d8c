// SPDX-License-Identifier: GPL-3.0-or-later
// Small changes of the lot leave the supply run where it was last shown: of two ways that cost much the same
// the cheaper one is now this, now that.
#pragma once

#include "layout/whole.h"

namespace underlawn {

// What a run that lies elsewhere has to save: m of plain digging, and as a share of any other measure.
inline constexpr double kKeptRunWorth = 0.5;
inline constexpr double kKeptRunShare = 0.005;

// The run as last shown, out of the wall by one of the stubs as it is now and on to that of the ends which is
// nearest, no farther than a header moves with its trenches: 1 m. Nothing where there is none.
std::optional<Polyline> run_as_kept(const Polyline& kept, const std::vector<Polyline>& stubs,
                                    const std::vector<Point>& ends);

// Whether a run differs from the one last shown by no more than what gives way a little, half a metre.
bool lies_as_kept(const Polyline& run, const Polyline& kept);

// The run last shown for that of the whole, to the same end, unless it is not legal there, has tighter bends,
// crosses more of the header or costs more by kKeptRunWorth. One that holds a coil, or is led by places of
// the designer's, stays as it is. `conduits` without the ground of any trench.
void keep_run(const Site& site, const Wishes& wishes, const Conduits& conduits, Whole& whole);

}  // namespace underlawn
