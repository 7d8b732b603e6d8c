// SPDX-License-Identifier: GPL-3.0-or-later
// The search for an order of digging: which piece when, spoil on which side, dug from which end.
#pragma once

#include <array>

#include "dig/spoil_band.h"

namespace underlawn {

// What a heap of one piece on one side meets among the others.
struct HeapMeets {
  std::vector<int> trenches;               // pieces whose trench, or the strip kept beside it, it covers
  std::vector<std::pair<int, int>> heaps;  // pieces, and their side (0 left, 1 right), whose heap it meets
};

struct SearchPiece {
  DigStep step;                    // line as in pieces_of
  std::array<SpoilBand, 2> bands;  // left, right of that line
  std::array<HeapMeets, 2> meets;
  std::array<bool, 2> room_to_end{};  // dug along its line, against it: a place for the machine at the end
  // Dug along its line, against it: pieces over which the machine would stand, were they open by then.
  std::array<std::vector<int>, 2> stands_over;
  bool shared = false;  // a coil trench that the run's pipes come into before the test
};

struct Chosen {
  int piece = 0;
  int side = -1;                        // 0 left, 1 right of the piece's line; -1: no place for its spoil
  bool against = false;                 // dug against its line
  std::vector<int> into, filled_first;  // pieces
  bool operator==(const Chosen&) const = default;
};

struct SearchAsk {
  std::optional<Point> from;  // where the machine comes from
  bool haul_all = false;
};

// A beam search, wide for few pieces and narrow for many. Least spoil without room first, then a place to
// stand for the machine all along, off what lies open; then least trenches filled early, then spoil off
// pavement and roots, then the shortest way for the machine. The machine backs away from what it has dug:
// mostly from the house along run and header, then from the heads of the coil trenches to their ends.
std::vector<Chosen> find_order(const std::vector<SearchPiece>& pieces, const SearchAsk& ask);

}  // namespace underlawn
