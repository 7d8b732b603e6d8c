// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/candidates.h"

#include "layout/amounts.h"
#include "layout/legality.h"

namespace underlawn {

namespace {

constexpr double kHair = 0.004;  // m

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
                        s.one_fewer, s.most, s.mixed});
}

double digging_for_slopes(const Keeping& keeping, const std::vector<Segment>& trenches) {
  if (keeping.slopes == nullptr) return 0;
  const Wishes& w = keeping.wishes;
  double dug = 0;
  for (const Segment& t : trenches) dug += dug_for_level_floor(*keeping.slopes, {t.a, t.b}, w.trench_width);
  return dug / std::max(1e-6, w.run_width * w.run_depth);
}

bool drop_illegal(const Keeping& keeping, Arrangement& a) {
  const Wishes& w = keeping.wishes;
  std::vector<Segment> kept;
  for (const Segment& t : a.trenches) {
    const bool pairs =
        std::all_of(kept.begin(), kept.end(), [&](const Segment& k) { return pair_is_legal(k, t, w); });
    if (pairs && trench_is_legal(keeping.site, t, w.trench_width) && keeps_off_held(t, keeping.held, w))
      kept.push_back(t);
  }
  std::swap(a.trenches, kept);
  return kept.size() > a.trenches.size();
}

std::vector<Arrangement> drawn_back(const Keeping& keeping, const Arrangement& packed) {
  const Wishes& w = keeping.wishes;
  std::vector<Arrangement> all;
  // What was shown is drawn back already, where that was better.
  if (!packed.in_line && !packed.shown)
    for (double back : {w.run_width + w.trench_width, w.run_width}) {
      all.push_back(packed);
      for (std::size_t t = 0; t < packed.trenches.size(); ++t)
        draw_back(keeping, all.back().trenches, t, back);
    }
  all.push_back(packed);
  return all;
}

void sort_by_guess(std::vector<Arrangement>& found) {
  std::stable_sort(found.begin(), found.end(), [](const Arrangement& l, const Arrangement& r) {
    return l.trenches.size() != r.trenches.size() ? l.trenches.size() > r.trenches.size()
                                                  : l.estimate < r.estimate;
  });
}

}  // namespace underlawn
