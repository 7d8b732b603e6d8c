// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "field/trench.h"
#include "layout/wishes.h"

namespace underlawn {

// Whether a search for trenches of that coil could lay this one: straight, as deep, as long and with as much
// pipe as those it lays, along the direction that they are held to.
bool may_be_searched(const Trench& locked, const Wishes& wishes, const Coil& coil);

// The trenches last shown, locked ones too: Wishes::kept is without those that were locked then. None where
// none is kept.
std::vector<Segment> kept_with_locked(const Wishes& wishes);

// Where every one of `locked` lies among the field's trenches already (ends and bends within a thousandth of
// a millimetre, the same depth, as much pipe): marks those as locked and tells so. Changes nothing otherwise.
bool lock_in_place(std::vector<Trench>& trenches, const std::vector<Trench>& locked);

}  // namespace underlawn
