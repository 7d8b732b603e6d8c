// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/candidates.h"

#include "layout/legality.h"

namespace underlawn {

namespace {

constexpr std::size_t kSearchedFully = 8;  // bearings, after a look at all
constexpr std::size_t kRefined = 2;        // of them, with their neighbours
constexpr double kHair = 0.004;            // m

struct Ranked {
  Bearing bearing;
  int fits;
  double estimate;
};

std::vector<Ranked> ranked_by_look(const Search& s, const Keeping& k, const std::vector<Bearing>& bearings,
                                   const std::stop_token& stop) {
  std::vector<Ranked> ranked;
  int best = 1;
  for (const Bearing& b : bearings) {
    if (stop.stop_requested()) return {};
    const Searched l = look(SearchRound(s, k.held, k.wishes, b.angle).search(), b, best);
    best = std::max(best, std::min(l.fits, s.wanted));
    ranked.push_back({b, std::min(l.fits, s.wanted), l.found.empty() ? 1e9 : l.found.front().estimate});
  }
  std::stable_sort(ranked.begin(), ranked.end(), [](const Ranked& l, const Ranked& r) {
    return l.fits != r.fits ? l.fits > r.fits : l.estimate < r.estimate;
  });
  return ranked;
}

void draw_back(const Keeping& keeping, std::vector<Segment>& trenches, std::size_t which, double back) {
  const Wishes& w = keeping.wishes;
  const Segment at = trenches[which];
  const Point u = unit(at.b - at.a);
  for (double share : {1.0, 0.75, 0.5, 0.25}) {
    const Segment moved{at.a + share * back * u, at.b + share * back * u};
    // With a hair to spare, as the search itself keeps: what is proved here is not proved again.
    const Segment spared{moved.a - kHair * u, moved.b + kHair * u};
    bool legal = trench_is_legal(keeping.site, spared, w.trench_width + 2 * kHair) &&
                 keeps_off_held(spared, keeping.held, w);
    for (std::size_t k = 0; legal && k < trenches.size(); ++k)
      legal = k == which || pair_is_legal(trenches[k], moved, w);
    if (!legal) continue;
    trenches[which] = moved;
    return;
  }
}

}  // namespace

SearchRound::SearchRound(const Search& s, const Held& held, const Wishes& wishes, double angle) : open_(s) {
  if (held.empty()) return;
  ground_ = with_held(s.ground, held, wishes, angle);
  for_header_ = header_with_held(s.for_header, held, wishes);
  round_.emplace(Search{ground_, for_header_, s.approach, s.size, s.run_width, s.wanted, s.one_sided,
                        s.one_fewer, s.most});
}

Candidates gather(const Search& s, const Keeping& keeping, const std::vector<Bearing>& bearings,
                  const std::stop_token& stop) {
  const std::vector<Ranked> ranked = ranked_by_look(s, keeping, bearings, stop);
  Candidates all;
  for (std::size_t i = 0; i < std::min(kSearchedFully, ranked.size()); ++i) {
    std::vector<Bearing> tried = {ranked[i].bearing};
    if (i < kRefined && ranked[i].fits < s.wanted && !keeping.wishes.direction)
      for (const Bearing& b : bearings_round(ranked[i].bearing.angle)) tried.push_back(b);
    for (const Bearing& b : tried) {
      if (stop.stop_requested()) return all;
      Searched full = search_fully(SearchRound(s, keeping.held, keeping.wishes, b.angle).search(), b);
      all.fits = std::max(all.fits, full.fits);
      for (Arrangement& a : full.found) all.found.push_back(std::move(a));
    }
  }
  return all;
}

void drop_illegal(const Keeping& keeping, std::vector<Arrangement>& found) {
  const Wishes& w = keeping.wishes;
  for (Arrangement& a : found) {
    std::vector<Segment> kept;
    for (const Segment& t : a.trenches) {
      const bool pairs =
          std::all_of(kept.begin(), kept.end(), [&](const Segment& k) { return pair_is_legal(k, t, w); });
      if (pairs && trench_is_legal(keeping.site, t, w.trench_width) && keeps_off_held(t, keeping.held, w))
        kept.push_back(t);
    }
    a.trenches = std::move(kept);
  }
  std::erase_if(found, [](const Arrangement& a) { return a.trenches.empty(); });
}

void add_drawn_back(const Keeping& keeping, std::vector<Arrangement>& found) {
  const Wishes& w = keeping.wishes;
  const std::size_t packed = found.size();
  for (std::size_t i = 0; i < packed; ++i) {
    if (found[i].in_line) continue;
    for (double back : {w.run_width, w.run_width + w.trench_width}) {
      Arrangement a = found[i];
      for (std::size_t t = 0; t < a.trenches.size(); ++t) draw_back(keeping, a.trenches, t, back);
      a.estimate -= 1e-3 * back;  // before the packed one, which it replaces where it is no worse
      found.push_back(std::move(a));
    }
  }
}

void sort_by_guess(std::vector<Arrangement>& found) {
  std::stable_sort(found.begin(), found.end(), [](const Arrangement& l, const Arrangement& r) {
    return l.trenches.size() != r.trenches.size() ? l.trenches.size() > r.trenches.size()
                                                  : l.estimate < r.estimate;
  });
}

}  // namespace underlawn
