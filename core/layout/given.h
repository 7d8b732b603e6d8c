// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches whose places are given.
#pragma once

#include "base/result.h"
#include "field/trench.h"
#include "layout/wishes.h"

namespace underlawn {

// As given and numbered so, each with its own depth and coil: the usual coil at its pitch where no pipe is
// given, else at the pitch that its pipe needs. Refuses, by number, ends that are no places, and what
// solve_coil refuses. The given list is not empty.
Result<std::vector<Trench>> given_trenches(const Wishes& wishes, const Coil& usual);

}  // namespace underlawn
