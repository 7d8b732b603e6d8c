// SPDX-License-Identifier: GPL-3.0-or-later
// Which of two whole arrangements is better by what the designer asked for.
#pragma once

#include "layout/amounts.h"
#include "layout/setting.h"
#include "layout/whole.h"

namespace underlawn {

// A whole arrangement as a layout: trenches (not numbered), header, run, crossings, direction.
Layout drawn_layout(const Site& site, const Wishes& wishes, const Coil& coil, const Whole& whole,
                    const std::vector<Trench>& locked);

// To be made least, in what the aim is counted in: m of plain digging (digging, circuits, metres), m2 (lawn),
// the designer's money (cost, mix), m (trees: how far less than 0 the nearest trunk is). `wanted`: circuits
// asked for, locked ones too. `terrain`: as amounts_of has it.
double measure_of(const Site& site, const Wishes& wishes, const Layout& layout, const Terrain& terrain,
                  double digging, int wanted);

// Whether what the aim makes least is the digging.
constexpr bool counts_digging(Aim aim) {
  return aim == Aim::digging || aim == Aim::circuits || aim == Aim::metres;
}

// More circuits first (but for Aim::mix, which prices them), then whether a run reaches the house, then heads
// joined, then the measure, then the digging.
bool better(const Whole& l, const Whole& r, Aim aim);

// Arrangements for up to `wanted` trenches worth completing, varied enough for the aim to choose from.
Candidates candidates_for(const Keeping& keeping, const Coil& coil, int wanted, const std::stop_token& stop);

// Legal ones, and the same drawn back, in the order in which they are to be completed; so many of each number
// of trenches. They are taken out of those found.
std::vector<Arrangement> worth_completing(const Keeping& keeping, std::vector<Arrangement>& found, Aim aim);

}  // namespace underlawn
