// SPDX-License-Identifier: GPL-3.0-or-later
// What has to be bought so that there is enough, of goods sold by the roll, the drum, the bag.
#pragma once

#include <vector>

namespace underlawn {

struct PackCount {
  double pack = 0;  // units in it
  int count = 0;
  bool operator==(const PackCount&) const = default;
};

struct Bought {
  std::vector<PackCount> packs;  // largest first; none where any amount is sold
  double amount = 0;             // units
  int joins = 0;                 // pieces longer than the longest pack: joints in them
  int cut_short = 0;             // of pieces: how many
  bool operator==(const Bought&) const = default;
};

// The least that covers `needed`, and of that the fewest packs; of thousands of ways to combine them the
// first 20 000 are looked at, from most of the largest on. Packs > 0, in any order; none: just what is
// needed. Needs of a million packs and more are covered with the largest alone.
Bought buy(double needed, const std::vector<double>& packs);

// The same where every piece has to come whole out of one pack: pieces are cut longest first, each from the
// fullest roll that still holds it; of the ways to do so with every size of roll the one with the least
// bought is taken. Near the least that can be, not proved to be it. A piece longer than the longest pack is
// joined of as many as it takes.
// Thousands of rolls are bought by their length alone.
Bought cut(std::vector<double> pieces, const std::vector<double>& packs);

}  // namespace underlawn
