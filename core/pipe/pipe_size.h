// SPDX-License-Identifier: GPL-3.0-or-later
// Polyethylene pipe by nominal size and dimension ratio (ASTM D3035, iron-pipe outside diameters).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

struct PipeSize {
  std::string name;             // "3/4 in DR 11": how plans and sheets name it
  std::string nominal;          // "3/4 in"
  double dr = 11;               // outside diameter / minimum wall
  double outside_diameter = 0;  // m
  double minimum_wall = 0;      // m
  // m, nominal inside diameter: what is left by the least wall.
  double minimum_wall_bore() const { return outside_diameter - 2 * minimum_wall; }
  // m, inside diameter for flow: walls run 6 % above the least, as in makers' tables (PolyPipe).
  double average_bore() const { return outside_diameter - 2.12 * outside_diameter / dr; }
  // m, for straight pipe bent cold and left so, no fitting in the bend: a multiple of the outside diameter by
  // dimension ratio. Pipe that comes rolled and keeps its roll's curve is laid tighter (common practice, no
  // source).
  double least_bend_radius() const;
};

const std::vector<PipeSize>& pipe_sizes();
Result<PipeSize> find_pipe(std::string_view name);  // Trouble lists the names there are

}  // namespace underlawn
