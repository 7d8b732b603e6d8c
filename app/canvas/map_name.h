// SPDX-License-Identifier: GPL-3.0-or-later
// What a thing is called on the drawing.
#pragma once

#include "canvas/paint_context.h"

namespace underlawn {

// Its name; on paper the beginning of a long one, which would otherwise lie over other things and be read as
// theirs. Tables have it whole.
QString map_name(const PaintContext& c, const Feature& f);
inline constexpr int kLongestOnPaper = 26;  // letters

}  // namespace underlawn
