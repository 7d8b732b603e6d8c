// SPDX-License-Identifier: GPL-3.0-or-later
// Lots with the most trenches that a mixed-integer program of its own found for them,
// tests/files/exact_lots.txt, made by tests/bench/exact_layouts.py; and the most metres of free length,
// tests/files/exact_metres.txt, made by tests/bench/exact_metres.py.
#pragma once

#include <map>
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

// Metres of trench, each between 0.6 and 1.5 of the lot's trench length long, header and run left out of
// account.
struct ExactMetres {
  double most = 0;           // m, columns of rows
  double angle = 0;          // rad, of those
  double in_one_column = 0;  // m, rows from end to end
  double bound = 0;          // m, no set of trenches of one direction is longer
};
std::map<int, ExactMetres> exact_metres(const std::string& path);  // by the seed of the lot
// The lot's wishes for most metres between those lengths.
Wishes wishes_for_metres(const ExactLot& lot);

}  // namespace underlawn::sample
