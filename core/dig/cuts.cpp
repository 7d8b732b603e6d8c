// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/cuts.h"

#include <algorithm>
#include <cmath>

#include "plane/region.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kSettled = 1e-3;  // m3 between two estimates of one stretch of depth
constexpr int kMostHalvings = 9;
constexpr double kSpeck = 1e-3;  // m3: the clipper's grid, no cut

Ring outline_at(const Cut& cut, double depth) {
  return strip_along(cut.line, cut.width + 2 * cut.slope * (cut.floor - depth));
}

bool boxes_meet(const Box& a, const Box& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

// One cut among those it may meet.
class Among {
 public:
  Among(const std::vector<Cut>& cuts, std::size_t which) : cut_(cuts[which]) {
    const Box box = bounds(outline_at(cut_, cut_.top));
    for (std::size_t i = 0; i < cuts.size(); ++i) {
      const bool together = std::min(cuts[i].floor, cut_.floor) > std::max(cuts[i].top, cut_.top);
      if (i == which || !together || !boxes_meet(box, bounds(outline_at(cuts[i], cuts[i].top)))) continue;
      (i < which ? before_ : after_).push_back(&cuts[i]);
    }
  }

  double volume() const {
    double sum = 0;
    const std::vector<double> levels = this->levels();
    for (std::size_t i = 1; i < levels.size(); ++i)
      sum += between({levels[i - 1], levels[i]}, (levels[i - 1] + levels[i]) / 2);
    return sum > kSpeck ? sum : 0;
  }

 private:
  struct Stretch {
    double from, to;
  };

  // Depths where another cut begins or ends: between them areas change steadily.
  std::vector<double> levels() const {
    std::vector<double> all = {cut_.top, cut_.floor};
    for (const auto* others : {&before_, &after_})
      for (const Cut* other : *others)
        for (double level : {other->top, other->floor})
          if (level > cut_.top && level < cut_.floor) all.push_back(level);
    std::sort(all.begin(), all.end());
    return all;
  }

  // m2 that it shares at the depth, of cuts that are there at `inside`; half of what it shares with those
  // before it and half of that with those after: each pair is halved, and nothing is taken off twice.
  double shared(double depth, double inside) const {
    if (before_.empty() && after_.empty()) return 0;
    const Region own = region_of(outline_at(cut_, depth));
    double sum = 0;
    for (const auto* others : {&before_, &after_}) {
      std::vector<Region> there;
      for (const Cut* other : *others)
        if (other->top < inside && inside < other->floor)
          there.push_back(region_of(outline_at(*other, depth)));
      if (!there.empty()) sum += area(intersect(own, unite(there))) / 2;
    }
    return sum;
  }

  double between(Stretch s, double inside) const {
    return simpson(s, inside, shared(s.from, inside), shared((s.from + s.to) / 2, inside),
                   shared(s.to, inside), kMostHalvings);
  }

  // Adaptive: exact where the area is of second degree in the depth.
  double simpson(Stretch s, double inside, double first, double mid, double last, int left) const {
    const double middle = (s.from + s.to) / 2, long_ = s.to - s.from;
    const double quarter = shared((s.from + middle) / 2, inside), most = shared((middle + s.to) / 2, inside);
    const double whole = long_ / 6 * (first + 4 * mid + last);
    const double halves = long_ / 12 * (first + 4 * quarter + 2 * mid + 4 * most + last);
    if (left == 0 || std::abs(halves - whole) < kSettled) return halves;
    return simpson({s.from, middle}, inside, first, quarter, mid, left - 1) +
           simpson({middle, s.to}, inside, mid, most, last, left - 1);
  }

  const Cut& cut_;
  std::vector<const Cut*> before_, after_;
};

}  // namespace

std::vector<double> counted_twice(const std::vector<Cut>& cuts) {
  std::vector<double> volumes;
  for (std::size_t i = 0; i < cuts.size(); ++i) volumes.push_back(Among(cuts, i).volume());
  return volumes;
}

}  // namespace underlawn
