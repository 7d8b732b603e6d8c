// SPDX-License-Identifier: GPL-3.0-or-later
// Straight pipe in a trench, one circuit: out along it and back, level by level from the floor up.
//
//                                            5     6
//        2                      4     3      4     3      seen from the head; odd numbers lead to the far
//        1         1     2      1     2      1     2      end, even ones back
//   single pipe   two pipes   four pipes   six pipes
//
// The single pipe is one pipe on the floor; its return lies straight above it in the backfill of the same
// trench, because a return in the neighbouring trench would need a trench of its own between their far ends.
// At its end a pipe turns to the next one by the side or level distance between them; those turns are in the
// pipe bought, and are fittings or tied bends: no least bend radius is asked of them.
#pragma once

#include <vector>

#include "base/result.h"
#include "field/coil.h"

namespace underlawn {

int pipe_levels(CoilPattern pattern);  // 1, 2 or 3; 0 for coils
int pipe_sides(CoilPattern pattern);   // 1 or 2; 0 for coils

struct StraightPipe {
  double across = 0;  // m to the left of the middle line, seen from the head
  double up = 0;      // m above the lowest pipe
};

// In the order of flow. Empty for coils.
std::vector<StraightPipe> straight_pipes(const Coil& coil);

// m in all turns from one pipe to the next.
double pipe_in_turns(const Coil& coil);

// coil_length = pipes x trench_length + turns. Refuses lengths and distances out of bounds, and a coil length
// that the turns alone use up.
Result<Coil> solve_straight(const CoilRequest& request);

// The pipe seen from above, in trench coordinates; turns between levels are points there.
Polyline straight_path(const Coil& coil);

}  // namespace underlawn
