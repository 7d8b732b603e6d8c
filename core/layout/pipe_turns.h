// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "pipe/pipe_size.h"
#include "plane/point.h"

namespace underlawn {

// How many bends of a trench are too sharp or too close together for the pipe in it to turn without a
// fitting. Pipe of least radius R and diameter d that swings from the outer side of a trench of width b round
// its inner corner turns by at most t where R (1 - cos(t/2)) = b - d, and needs R tan(t/2) of leg on each
// side of the corner. Plane geometry; R: PipeSize::least_bend_radius.
int turns_too_tight(const Polyline& line, double trench_width, const PipeSize& pipe);

}  // namespace underlawn
