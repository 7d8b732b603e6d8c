// SPDX-License-Identifier: GPL-3.0-or-later
// What lies open at a moment of the crew's calendar, and where the earth lies meanwhile.
#pragma once

#include <optional>
#include <vector>

#include "plan/outcome.h"

namespace underlawn {

struct PieceAt {
  int step = 0;    // in DigOrder::steps
  double dug = 0;  // share of it dug, 0..1
  bool filled = false;
  double back = 0;     // share of it filled back, 0..1, from where its filling begins
  int caster = -1;     // the step whose earth fills it; -1: the loader does
  bool earth = false;  // its heap lies there
};

// By its place in the order, which has to be there.
const DigStep& step_of(const Outcome& outcome, int step);

// `at`: s of working time. Steps not begun are not in it. Empty where there is no calendar.
std::vector<PieceAt> works_at(const Outcome& outcome, double at);

// When the heap of a step lies on the lot, s of working time; none where it has none, or there is no
// calendar.
struct EarthLies {
  double from = 0, to = 0;
};
std::optional<EarthLies> earth_lies(const Outcome& outcome, int step);

}  // namespace underlawn
