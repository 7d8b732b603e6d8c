// SPDX-License-Identifier: GPL-3.0-or-later
// A taped point as it stands in a notebook.
#pragma once

#include <string>
#include <string_view>

#include "base/quantity.h"
#include "base/result.h"
#include "plan/record/as_built.h"

namespace underlawn {

// `A 45'-3", B 31'-6", C 20', right`: corners with their distances, commas or semicolons between them (where
// there is a semicolon, only those part), at the end "left" or "right" of the line from the first corner to
// the second, in English or the language spoken; left without either. Empty text: no tapes. Refuses, as
// `thing` and naming the piece, what is neither.
Result<BuiltPoint> taped_from_text(std::string_view text, UnitSystem units, const std::string& thing);

// Whether such a text says left or right.
bool says_side(std::string_view text);

// The same again; empty without tapes.
std::string print_taped(const BuiltPoint& point, UnitSystem units);

}  // namespace underlawn
