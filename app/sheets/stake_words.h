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
QString entry_name();  // "entry"
// As stakes of trenches are called: "3 head".
std::string say_head(int trench);
std::string say_end(int trench);

// Marks behind the side of a tie, and what those say that were given.
class TapeMarks {
 public:
  explicit TapeMarks(const Site& site) : site_(site), ground_(tape_ground(site)) {}
  // ‡ over the neighbour's land, ¶ over ground not to be dug, § thin arcs; "" where nothing is the matter.
  QString of(const StakeOut& stake_out, const Tie& tie);
  // The same of a second pair, which proves and does not find: its arcs may be thin.
  QString of_check(const StakeOut& stake_out, Tie tie);
  QStringList notes() const;

 private:
  const Site& site_;
  TapeGround ground_;
  QStringList planted_;  // names
  bool off_lot_ = false, thin_ = false;
};

}  // namespace underlawn::sheet
