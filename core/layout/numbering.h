// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "field/trench.h"
#include "site/site.h"

namespace underlawn {

// Sorts and numbers trenches across the field from one side to the other, as a crew works, beginning on the
// side nearer the house; the coil in the run, whose trench is dug last, at the end. `direction`: rad, of the
// field trenches.
void number_across_field(std::vector<Trench>& trenches, double direction,
                         const std::optional<EntryPoint>& entry);

// The same group by group: the first sizes[0] trenches, and so on, each by the direction of its own first
// trench; then the rest as they are.
void number_by_groups(std::vector<Trench>& trenches, const std::vector<std::size_t>& sizes,
                      const std::optional<EntryPoint>& entry);

}  // namespace underlawn
