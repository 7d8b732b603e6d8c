// SPDX-License-Identifier: GPL-3.0-or-later
// What a solved loop gives cause to say.
#pragma once

#include "flow/hydraulics.h"

namespace underlawn {

// Each tried by solving it: reverse return, one size more in the whole header, coils of one length. Best
// first.
std::vector<Remedy> balance_remedies(const Layout& layout, const Wishes& wishes, const FlowWishes& flow,
                                     const HeaderSizes& sizes);

// Circuits out of balance, a pump that moves too little, antifreeze too thin, friction uncertain by a quarter
// (Re 2000 to 4000), circuits laminar at the coldest.
std::vector<Trouble> flow_remarks(const Flow& flow, const FlowWishes& wishes);

// What a designed header could not be made to hold: head and purge (balance is flow_remarks').
std::vector<Trouble> header_remarks(const HeaderChoice& choice, const FlowWishes& wishes);

}  // namespace underlawn
