// SPDX-License-Identifier: GPL-3.0-or-later
// Where one call of a deed ends and the next begins.
#pragma once

#include "survey/deed_words.h"

namespace underlawn::deed {

struct Piece {
  std::size_t from = 0, to = 0;  // tokens
  bool preamble = false;         // "Beginning at ...": before the first call
};

struct Pieces {
  std::vector<Piece> calls;
  bool commencing = false;            // the deed begins elsewhere and ties the point of beginning to it
  std::optional<double> unit;         // m, of "units: chains"
  std::optional<double> stated_area;  // m2
};

Pieces pieces_of(const PlainDeed& deed);

}  // namespace underlawn::deed
