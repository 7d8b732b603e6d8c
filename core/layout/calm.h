// SPDX-License-Identifier: GPL-3.0-or-later
// Small changes of the lot move trenches little: those last shown are among the candidates, and what lies
// near them is worth a little.
#pragma once

#include "layout/aim.h"

namespace underlawn {

// The trenches last shown as an arrangement, where they are all `length` m long and still legal; else moved
// aside as little as makes them so, up to a metre. Heads in one line may have been joined by a straight
// header or one by one, which is not known: that arrangement comes twice, the second time not said to be in
// line. Empty where there is none.
std::vector<Arrangement> as_kept(const Keeping& keeping, double length);

// 1 where every trench lies as it was last shown, falling to 0 at a mean displacement of 3 m of its ends,
// steepest at first, so that a small step has to be worth it; 0 where nothing was shown.
double likeness(const std::vector<Segment>& field, const std::vector<Segment>& kept);

// What lying near the trenches last shown takes off an arrangement's measure.
double calm_worth(const Wishes& wishes, const Whole& whole);

// What full likeness is worth: m of plain digging, and as a share of any other measure.
inline constexpr double kLikenessWorth = 3;
inline constexpr double kLikenessShare = 0.03;

}  // namespace underlawn
