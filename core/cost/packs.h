// SPDX-License-Identifier: GPL-3.0-or-later
// What has to be bought so that there is enough, of goods sold by the roll, the drum, the bag.
#pragma once

#include <vector>

namespace underlawn {

struct Pack {
  double amount = 0;  // units in it, > 0; 0: any amount, cut off for the buyer
  double price = 1;   // of one unit, >= 0
};

struct PackCount {
  double pack = 0;  // units in it; 0: cut off for the buyer
  int count = 0;
  bool operator==(const PackCount&) const = default;
};

// One pack that pieces are cut from.
struct Roll {
  double length = 0;        // units in it
  bool to_length = false;   // cut off for the buyer: nothing is left of it
  std::vector<int> pieces;  // places in what was asked; of a joined piece each length
  double left = 0;          // units
  bool operator==(const Roll&) const = default;
};

struct Bought {
  std::vector<PackCount> packs;  // largest first; none where any amount is sold
  double amount = 0;             // units
  int joins = 0;                 // pieces longer than the longest pack: joints in them
  int cut_short = 0;             // of pieces: how many
  std::vector<Roll> rolls;       // of pieces cut: longest first
  double paid = 0;               // sum of amount x price
  bool operator==(const Bought&) const = default;
};

// The cheapest that covers `needed`, of that the least, of that the fewest packs; of thousands of ways to
// combine them the first 20 000 are looked at, from most of the largest on. In any order; none: just what is
// needed. Needs of a million packs and more are covered with the largest alone.
Bought buy(double needed, const std::vector<Pack>& packs, double price = 1);

// The same where every piece has to come whole out of one pack: the cheapest set of rolls and pieces cut off
// for the buyer. Exact, by branch and bound, as long as half a million bins looked at are enough, which they
// are for tens of pieces; else the best that was found. A piece longer than the longest pack is joined of as
// many as it takes. Thousands of rolls are bought by their length alone.
Bought cut(const std::vector<double>& pieces, const std::vector<Pack>& packs, double price = 1);

}  // namespace underlawn
