// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/candidates.h"
#include "layout/in_steps.h"
#include "layout/rows.h"

namespace underlawn {

namespace {

constexpr std::size_t kSearchedFully = 8;  // bearings, after a look at many
constexpr std::size_t kLookedRound = 4;    // bearings whose neighbours in the grid are looked at
constexpr std::size_t kCoarse = 3;         // every third of the grid at first
constexpr std::size_t kKept = 6;           // arrangements that will be routed
constexpr std::size_t kBounded = 30;       // bearings searched for a higher count
constexpr std::size_t kMixed = 6;          // bearings packed more freely
constexpr std::size_t kMixedForLess = 2;   // of them, where no more can fit
constexpr std::size_t kNamed = 4;          // bearings that hold most
constexpr std::size_t kTies = 6;           // of them, that may hold as many as were found
constexpr std::size_t kRefined = 2;        // of them, with their neighbours
constexpr int kUnbounded = 1 << 20;
constexpr double kMoreThanALook = 5;  // m, that routing may turn the order of guesses round by
constexpr double kSamples = 3;        // rows sampled in a spacing, for the bounds

class Gatherer {
 public:
  Gatherer(const Search& s, const Keeping& keeping, const std::vector<Bearing>& all,
           const std::stop_token& stop)
      : search_(s), keeping_(keeping), all_(all), stop_(stop), looked_at_(all.size(), false) {}

  Candidates run() {
    look_coarsely();
    if (most_ >= search_.wanted)
      look_round_the_best();
    else
      raise_the_count();
    search_the_best();
    sort_tried();
    for (std::size_t k = 0; k < std::min(kNamed, tried_.size()); ++k)
      out_.bearings.push_back(tried_[k].bearing);
    return std::move(out_);
  }

 private:
  struct Ranked {
    std::size_t index;
    int fits;
    double estimate;
    bool operator<(const Ranked& o) const {
      if (fits != o.fits) return fits > o.fits;
      return estimate != o.estimate ? estimate < o.estimate : index < o.index;
    }
  };

  void look_coarsely() {
    std::size_t in_grid = 0;
    for (std::size_t i = 0; i < all_.size() && !stop_.stop_requested(); ++i)
      if (all_[i].drawn || in_grid++ % kCoarse == 0) look_at(i);
  }

  void look_at(std::size_t i) {
    if (looked_at_[i] || stop_.stop_requested()) return;
    looked_at_[i] = true;
    const SearchRound round = round_at(search_, all_[i]);
    const Searched l = look(round.search(), all_[i], std::max(1, most_), dearest_);
    out_.fits = std::max(out_.fits, l.fits);
    const int fits = std::min(dearest_ < kAnyPrice ? search_.wanted : l.fits, search_.wanted);
    most_ = std::max(most_, fits);
    if (dearest_ < kAnyPrice && l.found.empty()) return;
    ranked_.push_back({i, fits, l.found.empty() ? kAnyPrice : with_slopes(l.found.front()).estimate});
    std::stable_sort(ranked_.begin(), ranked_.end());
    // Once no higher count is asked for, only what may be among the cheapest is.
    if (out_.fits >= search_.most && ranked_.size() >= kSearchedFully &&
        ranked_[kSearchedFully - 1].fits == search_.wanted)
      dearest_ = ranked_[kSearchedFully - 1].estimate;
  }

  void look_round_the_best() {
    std::vector<std::size_t> round;
    for (std::size_t k = 0; k < std::min(kLookedRound, ranked_.size()); ++k)
      round.push_back(ranked_[k].index);
    for (std::size_t k : round)
      for (std::size_t i = 0; i < all_.size(); ++i)
        if (apart(all_[i].angle, all_[k].angle) < kCoarse * kGridStep) look_at(i);
  }

  static double apart(double a, double b) {
    const double d = std::abs(a - b);
    return std::min(d, std::numbers::pi - d);
  }

  // Bearings by how many trenches sampled rows hold, those left out that cannot hold more than were found.
  void raise_the_count() {
    struct Bounded {
      std::size_t index;
      RowBounds bounds;
    };
    std::vector<Bounded> open;
    for (std::size_t i = 0; i < all_.size() && !stop_.stop_requested(); ++i) {
      const SearchRound round = round_at(search_, all_[i]);
      const RowBounds b = row_bounds(Strips(round.search(), all_[i]), search_.size.spacing / kSamples);
      if (b.most >= most_) open.push_back({i, b});
    }
    std::stable_sort(open.begin(), open.end(), [](const Bounded& l, const Bounded& r) {
      return std::pair(l.bounds.least, l.bounds.most) > std::pair(r.bounds.least, r.bounds.most);
    });
    std::size_t tried = 0, ties = 0;
    for (const Bounded& b : open) {
      // As many at less digging is worth a few tries too.
      if (b.bounds.most < most_ || tried >= kBounded) continue;
      if (b.bounds.most == most_ && ties++ >= kTies) continue;
      ++tried;
      search_one(all_[b.index], kAnyPrice, false, b.bounds.most);
      if (tried > kRefined || keeping_.wishes.direction) continue;
      for (const Bearing& near : bearings_round(all_[b.index].angle)) search_one(near, kAnyPrice);
    }
    mix();
  }

  void sort_tried() {
    std::stable_sort(tried_.begin(), tried_.end(),
                     [](const Tried& l, const Tried& r) { return l.fits > r.fits; });
  }

  // The bearings that hold most, packed more freely, from the one side and from the other.
  void mix() {
    sort_tried();
    const std::vector<Tried> tried = tried_;
    for (std::size_t k = 0; k < std::min(kMixed, tried.size()); ++k) {
      for (const double turn : {0.0, std::numbers::pi}) {
        if (most_ >= search_.wanted) return;
        // As many at less digging is worth the first few.
        if (k >= kMixedForLess && tried[k].most <= most_) break;
        search_one({tried[k].bearing.angle + turn, tried[k].bearing.drawn}, kAnyPrice, true);
      }
    }
  }

  void search_the_best() {
    for (std::size_t k = 0; k < std::min(kSearchedFully, ranked_.size()); ++k) {
      if (ranked_[k].fits < most_ && k > 0 && most_ == search_.wanted) break;
      const Bearing& b = all_[ranked_[k].index];
      if (!was_tried(b)) search_one(b, dearest_found());
    }
  }

  bool was_tried(const Bearing& b) const {
    return std::any_of(tried_.begin(), tried_.end(),
                       [&b](const Tried& t) { return t.bearing.angle == b.angle; });
  }

  // From this guess on an arrangement will not be routed.
  double dearest_found() const {
    if (out_.fits < search_.most) return kAnyPrice;
    const double by_look = dearest_ + kMoreThanALook;
    std::vector<double> estimates;
    for (const Arrangement& a : out_.found)
      if (static_cast<int>(a.trenches.size()) == search_.wanted) estimates.push_back(a.estimate);
    if (estimates.size() < kKept) return std::min(kAnyPrice, by_look);
    std::nth_element(estimates.begin(), estimates.begin() + (kKept - 1), estimates.end());
    return std::min(estimates[kKept - 1], by_look);
  }

  // `most`: bound of what that bearing holds, where there is one.
  void search_one(const Bearing& b, double dearest, bool mixed = false, int most = kUnbounded) {
    if (stop_.stop_requested()) return;
    Search search = search_;
    search.mixed = mixed;
    // Of those that hold two fewer nothing is ever joined up.
    Searched full = search_fully(round_at(search, b).search(), b, dearest, most_ - 1);
    tried_.push_back({b, full.fits, most});
    out_.fits = std::max(out_.fits, full.fits);
    most_ = std::max(most_, std::min(full.fits, search_.wanted));
    for (Arrangement& a : full.found) out_.found.push_back(with_slopes(std::move(a)));
  }

  Arrangement with_slopes(Arrangement a) const {
    a.estimate = in_steps(a.estimate + digging_for_slopes(keeping_, a.trenches));
    return a;
  }

  struct Tried {
    Bearing bearing;
    int fits;
    int most;
  };
  SearchRound round_at(const Search& search, const Bearing& b) const {
    return SearchRound(search, keeping_.held, keeping_.wishes, b.angle);
  }

  const Search& search_;
  const Keeping& keeping_;
  const std::vector<Bearing>& all_;
  const std::stop_token& stop_;
  std::vector<bool> looked_at_;
  std::vector<Ranked> ranked_;
  std::vector<Tried> tried_;
  int most_ = 0;                // no more than wanted
  double dearest_ = kAnyPrice;  // a look dearer than this is not ranked among the best
  Candidates out_;
};

}  // namespace

Candidates gather(const Search& search, const Keeping& keeping, const std::vector<Bearing>& bearings,
                  const std::stop_token& stop) {
  return Gatherer(search, keeping, bearings, stop).run();
}

}  // namespace underlawn
