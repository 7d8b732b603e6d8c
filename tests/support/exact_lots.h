// SPDX-License-Identifier: GPL-3.0-or-later
// Lots with the most trenches, and the most metres of free length, that a mixed-integer program of its own
// found for them: tests/files/exact_lots.txt, made by tests/bench/exact_layouts.py.
#pragma once

#include <string>
#include <vector>

#include "field/coil.h"
#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn::sample {

struct ExactLot {
  int seed = 0;
  std::string shape;
  Site site;
  Wishes wishes;  // more circuits than fit, none of them in the run
  Coil coil;
  int most = 0;   // trenches of one direction, the best solution known
  int bound = 0;  // and what no solution exceeds
  bool proved = false;
  double angle = 0;    // rad, of that solution
  double seconds = 0;  // the program took
};

std::vector<ExactLot> exact_lots(const std::string& path);

}  // namespace underlawn::sample
