// SPDX-License-Identifier: GPL-3.0-or-later
// When two tapes fix a point well.
#pragma once

#include <numbers>

namespace underlawn {

// Arcs that cross at less are thin: at 30 degrees an error of a tape is twice as large in the point, at 20
// three times, at 15 four. rad. The one limit of the whole program: of the mark beside a tape, of the
// finding, of points taped on the lot. Surveying textbooks ask no less than 30
// degrees of every angle of a well-conditioned triangle (common practice; read in exercises on triangulation,
// not in a standard).
inline constexpr double kThinCut = std::numbers::pi / 6;

}  // namespace underlawn
