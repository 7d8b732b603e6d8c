// SPDX-License-Identifier: GPL-3.0-or-later
// Heads that other trenches shut in: the ends of those are taken back where header or run then reach every
// head.
#pragma once

#include "layout/whole.h"

namespace underlawn {

// The arrangement, legal by itself, with trenches taken back (one that would be shorter than
// Wishes::least_length goes) and shut-in trenches turned round, so that the fewest metres are lost on each
// way; joined up. Nothing where that takes it below `at_least` metres, does not reach every head and the
// house, or there is no way out of the wall.
std::optional<Whole> with_ways_opened(const Keeping& keeping, const Conduits& conduits,
                                      const Completer& completer, Arrangement arrangement, double at_least);

}  // namespace underlawn
