// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/costs.h"

#include "layout/lifted.h"
#include "layout/rows.h"

namespace underlawn {

namespace {

constexpr double kSamples = 3;         // rows sampled in a spacing, for the bounds
constexpr std::size_t kDrawn = 4;      // bearings that follow the longest edges
constexpr std::size_t kTried = 2;      // bearings searched fully, after a look
constexpr std::size_t kOfTheGrid = 4;  // at every so manyth of the grid, and at all that follow something

}  // namespace

int most_that_fit(const Search& search, const Keeping& k, const std::vector<Bearing>& bearings,
                  const std::stop_token& stop) {
  std::vector<std::pair<int, std::size_t>> ranked;
  int most = 0;
  for (std::size_t i = 0; i < bearings.size() && !stop.stop_requested(); ++i) {
    if (!bearings[i].drawn && i % kOfTheGrid != 0) continue;
    const SearchRound round(search, k.held, k.wishes, bearings[i].angle);
    ranked.push_back({-look(round.search(), bearings[i], search.most + 1, kAnyPrice).fits, i});
    most = std::max(most, -ranked.back().first);
  }
  std::stable_sort(ranked.begin(), ranked.end(), [](auto l, auto r) { return l.first < r.first; });
  for (std::size_t i = 0; i < std::min(kTried, ranked.size()) && !stop.stop_requested(); ++i)
    if (most < search.most) {
      const Bearing& b = bearings[ranked[i].second];
      most = std::max(
          most,
          search_fully(SearchRound(search, k.held, k.wishes, b.angle).search(), b, kAnyPrice, most + 1).fits);
    }
  return most;
}

namespace {

// Only bearings that may hold more than `fits` are searched.
int most_beyond(const Search& search, const Keeping& k, const std::vector<Bearing>& bearings, int fits,
                const std::stop_token& stop) {
  int most = fits;
  for (const Bearing& b : bearings) {
    if (stop.stop_requested() || most >= search.most) break;
    const SearchRound round(search, k.held, k.wishes, b.angle);
    if (row_bounds(Strips(round.search(), b), search.size.spacing / kSamples).most <= most) continue;
    most = std::max(most, search_fully(round.search(), b, kAnyPrice, most + 1).fits);
  }
  return most;
}

}  // namespace

std::vector<RestrictionCost> restriction_costs(const Search& search, const Keeping& keeping,
                                               std::vector<Bearing> best, const std::vector<Bearing>& all,
                                               int fits, const std::stop_token& stop) {
  for (std::size_t i = 0; i < std::min(kDrawn, all.size()); ++i) best.push_back(all[i]);
  std::vector<RestrictionCost> costs;
  for (const Restriction& restriction : search.ground.restrictions) {
    const std::vector<LiftedSite> open = liftings(keeping.site, restriction);
    if (stop.stop_requested()) break;
    if (open.empty()) continue;
    const Confines ground = trench_ground(open.back().site), header = conduit_ground(open.back().site);
    const Search s{ground,        header, search.approach, search.size, search.run_width,
                   search.wanted, false,  false,           search.most};
    const int more = most_beyond(s, keeping, best, fits, stop) - fits;
    if (more > 0) costs.push_back({restriction, more});
  }
  std::stable_sort(costs.begin(), costs.end(), [](const RestrictionCost& l, const RestrictionCost& r) {
    return l.trenches > r.trenches;
  });
  return costs;
}

}  // namespace underlawn
