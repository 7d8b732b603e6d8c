// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "canvas/paint_context.h"

namespace underlawn::sheet {

// The base line as far as it is walked: along its wall and on to the last station either way, a stroke at
// each. Nothing where there is none.
void paint_base_line(PaintContext& on);

}  // namespace underlawn::sheet
