// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "field/trench.h"

namespace underlawn {

// Where every one of `locked` lies among the field's trenches already (ends and bends within a thousandth of
// a millimetre, the same depth, as much pipe): marks those as locked and tells so. Changes nothing otherwise.
bool lock_in_place(std::vector<Trench>& trenches, const std::vector<Trench>& locked);

}  // namespace underlawn
