// SPDX-License-Identifier: GPL-3.0-or-later
// One field of trenches parted into groups that lie beside or behind each other.
#pragma once

#include "layout/candidates.h"

namespace underlawn {

// The groups in the order in which they are joined up, the first so many trenches each.
using Parted = std::vector<Arrangement>;

// Every legal way to part the field along or across itself into groups of those sizes, which add up to all
// its trenches. `apart`: groups are moved away from each other until their floors keep the spacing; else
// every trench stays where it is.
std::vector<Parted> parted(const Keeping& keeping, const Arrangement& field,
                           const std::vector<std::size_t>& sizes, bool apart);

// m between neighbours of a field that, drawn together in so many groups, lies apart.
double spacing_to_part(const Wishes& wishes, std::size_t trenches, std::size_t groups);

// Sizes of so many groups that add up to all the trenches, the most even first, at most so many of them.
std::vector<std::vector<std::size_t>> shares(std::size_t trenches, std::size_t groups, std::size_t most);

}  // namespace underlawn
