// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches whose places are given.
#pragma once

#include "base/result.h"
#include "field/trench.h"
#include "layout/wishes.h"

namespace underlawn {

// As given and numbered so, each with its own depth and coil: the usual coil at its pitch where no pipe is
// given, else at the pitch that its pipe needs. The coil is as long as the middle line with its bends.
// Refuses, by number, ends and bends that are no places, bends that repeat the point before them or turn back
// the way they came, and what solve_coil refuses. The given list is not empty.
Result<std::vector<Trench>> given_trenches(const Wishes& wishes, const Coil& usual);

// The trench of wishes.locked[index] in the same way, numbered 1.
Result<Trench> locked_trench(const Wishes& wishes, std::size_t index, const Coil& usual);

Polyline line_of(const GivenTrench& given);  // head, bends, end

// A trench that turns by more does not go on, it goes back.
inline constexpr double kSharpestTurn = 3.0543;  // rad: 175 degrees

}  // namespace underlawn
