// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/candidates.h"
#include "layout/in_steps.h"

namespace underlawn {

namespace {

constexpr int kFewHeights = 5, kManyHeights = 16;  // of rows in a spacing
constexpr std::size_t kLookedInto = 16;            // bearings, after a few heights
constexpr std::size_t kLanes = 12;                 // and those with a lane
constexpr std::size_t kArranged = 24;              // of each that are joined up

struct Ranked {
  Bearing bearing;
  LongestRows rows;
};

void sort_by_metres(std::vector<Ranked>& all) {
  std::stable_sort(all.begin(), all.end(), [](const Ranked& l, const Ranked& r) {
    return in_steps(l.rows.metres) > in_steps(r.rows.metres);
  });
}

class Longest {
 public:
  Longest(const Search& search, const Keeping& keeping, const LengthBounds& bounds,
          const std::stop_token& stop)
      : search_(search), keeping_(keeping), bounds_(bounds), stop_(stop) {}

  // The best few of the bearings by a few heights, by many; one for each place of the heads.
  void look(const std::vector<Bearing>& bearings, HeadsAt roughly, std::size_t most,
            const std::vector<HeadsAt>& heads) {
    std::vector<Ranked> few, many;
    for (const Bearing& b : bearings) {
      if (stop_.stop_requested()) return;
      few.push_back(looked_at(b, kFewHeights, b.drawn, roughly));
    }
    sort_by_metres(few);
    if (few.size() > most) few.resize(most);
    for (const Ranked& r : few)
      for (HeadsAt at : heads)
        if (!stop_.stop_requested() && r.rows.count > 0)
          many.push_back(looked_at(r.bearing, kManyHeights, true, at));
    sort_by_metres(many);
    if (many.size() > kArranged) many.resize(kArranged);
    found_.insert(found_.end(), many.begin(), many.end());
  }

  std::vector<Arrangement> arrangements() {
    sort_by_metres(found_);
    std::vector<Arrangement> all;
    for (const Ranked& r : found_) {
      const SearchRound round(search_, keeping_.held, keeping_.wishes, r.bearing.angle);
      if (r.rows.count > 0)
        all.push_back(arranged(Strips(round.search(), r.bearing), r.bearing, r.rows, bounds_));
    }
    return all;
  }

 private:
  Ranked looked_at(const Bearing& b, int heights, bool events, HeadsAt heads) const {
    const SearchRound round(search_, keeping_.held, keeping_.wishes, b.angle);
    return {b, longest_rows(Strips(round.search(), b), bounds_, search_.wanted, heights, events, heads)};
  }

  const Search& search_;
  const Keeping& keeping_;
  LengthBounds bounds_;
  std::stop_token stop_;
  std::vector<Ranked> found_;
};

}  // namespace

std::vector<Arrangement> longest_arrangements(const Search& search, const Keeping& keeping,
                                              const std::vector<Bearing>& bearings,
                                              const LengthBounds& bounds, const std::stop_token& stop) {
  Longest longest(search, keeping, bounds, stop);
  longest.look(bearings, HeadsAt::either, kLookedInto, {HeadsAt::either, HeadsAt::low, HeadsAt::high});
  longest.look(bearings, HeadsAt::lane, kLanes, {HeadsAt::lane});
  return longest.arrangements();
}

}  // namespace underlawn
