// SPDX-License-Identifier: GPL-3.0-or-later
// The lawn that a job takes.
#pragma once

#include "dig/dig_order.h"
#include "plane/region.h"
#include "site/site.h"

namespace underlawn {

// What wheels or tracks so many m apart run over, round at its ends.
void add_track(std::vector<Region>& all, const Polyline& way, double width);
// What one step takes of the ground where it is dug: its trench with its earth and room to work, and its heap
// where that lies.
void add_ground_of(const DigStep& step, const Machine& excavator, std::vector<Region>& all);
void add_laydown(const DigOrder& order, std::vector<Region>& all);
// Of such parts what is lawn: on the lot, and neither house nor drive nor bed.
Region of_the_lawn(const Site& site, const std::vector<Region>& parts);

// Everything that is dug, heaped on, driven over or kept for pipe from the first day to the last: what is
// sown when the work is done.
Region ground_used(const Site& site, const DigOrder& order, const Machine& excavator);

}  // namespace underlawn
