// SPDX-License-Identifier: GPL-3.0-or-later
// Judges a layout by plain distances between segments, written for the tests alone: it shares no geometry
// with what it judges.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/layout.h"

namespace underlawn::judge {

// One sentence for everything the layout does that it may not. Without a length, trenches may have any
// between those of the wishes.
std::vector<std::string> faults(const Site& site, const Wishes& wishes, const Layout& layout,
                                std::optional<double> length);

}  // namespace underlawn::judge
