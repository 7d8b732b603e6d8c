// SPDX-License-Identifier: GPL-3.0-or-later
// What a solved loop gives cause to say.
#pragma once

#include "flow/hydraulics.h"

namespace underlawn {

// Each tried by solving it: reverse return, one size more in the whole header, coils of one length. Best
// first.
std::vector<Remedy> balance_remedies(const Layout& layout, const Wishes& wishes, const FlowWishes& flow,
                                     const HeaderSizes& sizes);

// In words: what each would bring the imbalance to.
std::string balance_advice(const std::vector<Remedy>& remedies, UnitSystem units);

// What is worth knowing and stops nothing: a pump that cannot be solved for, circuits out of balance, a pump
// that moves too little, antifreeze too thin, friction uncertain by a quarter (Re 2000 to 4000), circuits
// laminar at the coldest, and what a designed header could not be made to hold.
std::vector<Trouble> flow_remarks(const Flow& flow, const FlowWishes& wishes, UnitSystem units);

}  // namespace underlawn
