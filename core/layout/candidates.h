// SPDX-License-Identifier: GPL-3.0-or-later
// Arrangements worth joining up.
#pragma once

#include <stop_token>

#include "layout/held.h"
#include "layout/layout.h"
#include "layout/longest_rows.h"

namespace underlawn {

class Terrain;

struct Candidates {
  int fits = 0;  // most trenches found, within the search's limit
  std::vector<Arrangement> found;
  std::vector<Bearing> bearings;  // a few that hold most
};

// A search in one direction, round what is held.
class SearchRound {
 public:
  SearchRound(const Search& search, const Held& held, const Wishes& wishes, double angle);
  SearchRound(const SearchRound&) = delete;
  const Search& search() const { return round_ ? *round_ : open_; }

 private:
  const Search& open_;
  Confines ground_, for_header_;
  std::optional<Search> round_;
};

// What arrangements have to keep to. `site` with its closed sides.
struct Keeping {
  const Site& site;
  const Wishes& wishes;
  const Held& held;
  const std::vector<Ring>* out_of_reach = nullptr;  // no heads in there
  const Terrain* slopes = nullptr;                  // where floors are to be level on ground that is not
};

// m of plain digging that level floors cost an arrangement's trenches; 0 without slopes.
double digging_for_slopes(const Keeping& keeping, const std::vector<Segment>& trenches);

// A coarse look, then a finer one round the best; where fewer fit than wanted, every bearing is bounded
// from above and searched where the bound beats what was found.
Candidates gather(const Search& search, const Keeping& keeping, const std::vector<Bearing>& bearings,
                  const std::stop_token& stop);

// Rows of trenches of free length: every bearing by a few heights of rows, the best of them by many; most
// metres first.
std::vector<Arrangement> longest_arrangements(const Search& search, const Keeping& keeping,
                                              const std::vector<Bearing>& bearings,
                                              const LengthBounds& bounds, const std::stop_token& stop);

// Leaves out trenches that distances do not prove legal. Whether any had to go.
bool drop_illegal(const Keeping& keeping, Arrangement& arrangement);

// Heads packed against a boundary leave no way past them: the same trenches drawn back a little along
// themselves, each as far as it may, are another arrangement, joined more cheaply. Those, then the
// arrangement itself, which has to be legal.
std::vector<Arrangement> drawn_back(const Keeping& keeping, const Arrangement& packed);

// Most trenches first, then the best guesses.
void sort_by_guess(std::vector<Arrangement>& found);

}  // namespace underlawn
