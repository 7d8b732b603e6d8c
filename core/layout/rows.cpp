// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/rows.h"

namespace underlawn {

void stack_rows(FreeView free, double spacing, double from, int most, std::vector<double>& rows) {
  double next = from;
  for (const Interval& i : free) {
    double y = std::max(next, i.low);
    while (y <= i.high + kFitSlack) {
      if (static_cast<int>(rows.size()) >= most) return;
      rows.push_back(std::min(y, std::max(i.low, i.high)));
      y = next = y + spacing;
    }
  }
}

void hang_rows(FreeView free, double spacing, double from, int most, std::vector<double>& rows) {
  double next = from;
  for (auto i = free.rbegin(); i != free.rend(); ++i) {
    double y = std::min(next, i->high);
    while (y >= i->low - kFitSlack) {
      if (static_cast<int>(rows.size()) >= most) return;
      rows.push_back(std::max(y, std::min(i->low, i->high)));
      y = next = y - spacing;
    }
  }
}

namespace {

int trenches_in(const Free& places, const TrenchSize& size) {
  return packed(places, size.pitch(), 2 * kFitSlack);
}

// How many trenches a row holds, by height: counts[i] from heights[i] to heights[i + 1].
struct Profile {
  std::vector<double> heights;
  std::vector<int> counts;

  int at(double y) const {
    const auto above = std::upper_bound(heights.begin(), heights.end(), y + 1e-9);
    return above == heights.begin() ? 0 : counts[static_cast<std::size_t>(above - heights.begin()) - 1];
  }
};

class Profiler {
 public:
  explicit Profiler(const Strips& strips) : strips_(strips) {}

  Profile sampled(double low, double high, double step) {
    double y = low;
    int count = count_at(y);
    add(y, count);
    for (int i = 1; y < high; ++i) {
      const double next = std::min(high, low + i * step);
      const int there = count_at(next);
      if (there != count) narrow(y, count, next, there);
      y = next;
      count = there;
    }
    return std::move(profile_);
  }

 private:
  int count_at(double y) {
    strips_.places(y, places_);
    return trenches_in(places_, strips_.size());
  }
  void add(double y, int count) {
    profile_.heights.push_back(y);
    profile_.counts.push_back(count);
  }
  // A rise is put at its far side, a fall at its near one: a place said to hold a trench does hold it.
  void narrow(double low, int below, double high, int above) {
    if (high - low < kFitSlack / 5) {
      add(above > below ? high : low, above);
      return;
    }
    const double middle = (low + high) / 2;
    const int there = count_at(middle);
    if (there != below) narrow(low, below, middle, there);
    if (there != above) narrow(middle, there, high, above);
  }

  const Strips& strips_;
  Profile profile_;
  Free places_;  // used again and again
};

// Heights worth trying: where the count changes, on the side that holds more, and whole spacings from there.
std::vector<double> heights_to_try(const Profile& p, double spacing, Interval across) {
  std::vector<double> heights;
  for (std::size_t i = 1; i < p.heights.size(); ++i) {
    const double at = p.counts[i] > p.counts[i - 1] ? p.heights[i] : p.heights[i] - kFitSlack / 5;
    double y = at - std::floor((at - across.low) / spacing) * spacing;
    while (y <= across.high) {
      if (p.at(y) > 0) heights.push_back(y);
      y += spacing;
    }
  }
  std::sort(heights.begin(), heights.end());
  heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
  return heights;
}

}  // namespace

DenseRows densest_rows(const Strips& strips, double step, bool keep_tried) {
  const TrenchSize& size = strips.size();
  const Interval across = strips.across();
  const Profile profile = Profiler(strips).sampled(across.low, across.high, step);
  const std::vector<double> y = heights_to_try(profile, size.spacing, across);
  // best[i]: most trenches in rows at or below y[i]; taken[i]: the row y[i] is among them.
  std::vector<int> best(y.size() + 1, 0), before(y.size() + 1, 0);
  std::vector<bool> taken(y.size() + 1, false);
  std::size_t below = 0;
  for (std::size_t i = 0; i < y.size(); ++i) {
    while (y[below] <= y[i] - size.spacing + 1e-9) ++below;
    const int with = best[below] + profile.at(y[i]);
    taken[i + 1] = with > best[i];
    best[i + 1] = std::max(with, best[i]);
    before[i + 1] = static_cast<int>(taken[i + 1] ? below : i);
  }
  DenseRows rows;
  rows.most = best.back();
  // What is narrower than the samples can shut a row between two of them.
  const auto add = [&](std::vector<PackedRow>& to, double at) {
    PackedRow row{at, {}};
    strips.places(at, row.places);
    if (!row.places.empty()) to.push_back(std::move(row));
  };
  if (keep_tried)
    for (double at : y) add(rows.tried, at);
  for (std::size_t i = y.size(); i > 0; i = static_cast<std::size_t>(before[i]))
    if (taken[i]) add(rows.chosen, y[i - 1]);
  std::reverse(rows.chosen.begin(), rows.chosen.end());
  return rows;
}

RowBounds row_bounds(const Strips& strips, double step) {
  const TrenchSize& size = strips.size();
  const Interval across = strips.across();
  const int n = static_cast<int>((across.high - across.low) / step) + 2;
  std::vector<Free> places(static_cast<std::size_t>(n));
  for (int i = 0; i < n; ++i) strips.places(across.low + i * step, places[i]);
  // Every trench with the ground it keeps meets one of the lines a spacing apart, and those that meet the
  // same line keep a pitch along it.
  const int window = static_cast<int>(std::ceil(size.spacing / step));
  std::vector<int> line(places.size()), best(places.size() + 1, 0);
  Free near;
  for (int i = 0; i < n; ++i) {
    near.clear();
    for (int k = std::max(0, i - window); k <= std::min(n - 1, i + 1); ++k)
      near.insert(near.end(), places[k].begin(), places[k].end());
    join(near, {}, 0);
    line[i] = packed(near, size.pitch(), kFitSlack);
    best[i + 1] = std::max(best[i], best[std::max(0, i + 1 - window)] + trenches_in(places[i], size));
  }
  int most = 1 << 20;
  for (int first = 0; first < window; ++first) {
    int sum = 0;
    double y = first * step;
    while (sum < most) {
      sum += line[std::min(n - 1, static_cast<int>(std::lround(y / step)))];
      if (y > (n - 1) * step) break;
      y += size.spacing;
    }
    most = std::min(most, sum);
  }
  return {best.back(), most};
}

}  // namespace underlawn
