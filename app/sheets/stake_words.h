// SPDX-License-Identifier: GPL-3.0-or-later
// What the tables of stakes have in common.
#pragma once

#include <string>

#include "plan/stake_out.h"
#include "plan/tape.h"
#include "sheets/block.h"

namespace underlawn::sheet {

// Stake, two corners with their tapes, side.
std::vector<Column> tape_columns();

// "L", "R": the stake lies to the left or right of the way from the first corner to the second.
QString side_word(const Tie& tie);
QString over_neighbour_words();  // what ‡ says
QString entry_name();            // "entry"
// As stakes of trenches are called: "3 head".
std::string say_head(int trench);
std::string say_end(int trench);

class Sight {
 public:
  explicit Sight(const Site& site) : ground_(tape_ground(site)) {}
  // Whether a tape of the tie runs over the neighbour's land.
  bool over_neighbour(const StakeOut& stake_out, const Tie& tie) const;

 private:
  TapeGround ground_;
};

}  // namespace underlawn::sheet
