// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/rows.h"

namespace underlawn {

std::vector<Interval> free_rows(const Ground& g, double x, const TrenchSize& size) {
  const double half = size.width / 2 - kFitSlack;
  std::vector<Interval> blocked;
  for (const Capsule& c : g.capsules)
    if (auto e = extent_along_y(c, x + kFitSlack, x + size.length - kFitSlack))
      blocked.push_back({e->low - half, e->high + half});
  const Box box = bounds(g.lot);
  std::vector<Interval> free = gaps(blocked, {box.low.y, box.high.y});
  std::erase_if(free, [&](const Interval& i) {
    return !is_open(g, {x + size.length / 2, (i.low + i.high) / 2});
  });
  return free;
}

std::vector<Interval> free_stretches(const Ground& g, double y, const TrenchSize& size) {
  const double half = size.width / 2 - kFitSlack;
  std::vector<Interval> blocked;
  for (const Capsule& c : g.capsules)
    if (auto e = extent_along_x(c, y - half, y + half)) blocked.push_back(*e);
  const Box box = bounds(g.lot);
  std::vector<Interval> free = gaps(blocked, {box.low.x, box.high.x});
  std::erase_if(free, [&](const Interval& i) {
    return i.high - i.low < size.length - 2 * kFitSlack || !is_open(g, {(i.low + i.high) / 2, y});
  });
  return free;
}

std::vector<double> stacked_rows(const std::vector<Interval>& free, double spacing, double from, int most) {
  std::vector<double> rows;
  double next = from;
  for (const Interval& i : free)
    for (double y = std::max(next, i.low); y <= i.high + kFitSlack; y = next) {
      if (static_cast<int>(rows.size()) >= most) return rows;
      rows.push_back(std::min(y, std::max(i.low, i.high)));
      next = y + spacing;
    }
  return rows;
}

std::vector<double> hung_rows(const std::vector<Interval>& free, double spacing, double from, int most) {
  std::vector<Interval> mirrored;
  for (auto i = free.rbegin(); i != free.rend(); ++i) mirrored.push_back({-i->high, -i->low});
  std::vector<double> rows = stacked_rows(mirrored, spacing, -from, most);
  for (double& y : rows) y = -y;
  return rows;
}

int trenches_in(const std::vector<Interval>& stretches, const TrenchSize& size) {
  int sum = 0;
  for (const Interval& i : stretches)
    sum += static_cast<int>((i.high - i.low + 2 * kFitSlack + size.end_gap) / (size.length + size.end_gap));
  return sum;
}

namespace {

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
  Profiler(const Ground& g, const TrenchSize& size) : ground_(g), size_(size) {}

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
  int count_at(double y) const { return trenches_in(free_stretches(ground_, y, size_), size_); }
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

  const Ground& ground_;
  const TrenchSize& size_;
  Profile profile_;
};

// Heights worth trying: where the count rises, and whole spacings above.
std::vector<double> heights_to_try(const Profile& p, double spacing, double high) {
  std::vector<double> heights;
  for (std::size_t i = 0; i < p.heights.size(); ++i) {
    const int before = i == 0 ? 0 : p.counts[i - 1];
    if (p.counts[i] <= before) continue;
    for (int k = 0; p.heights[i] + k * spacing <= high && k < 2000; ++k)
      if (p.at(p.heights[i] + k * spacing) > 0) heights.push_back(p.heights[i] + k * spacing);
  }
  std::sort(heights.begin(), heights.end());
  heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
  return heights;
}

}  // namespace

std::vector<PackedRow> densest_rows(const Ground& g, const TrenchSize& size, double step) {
  const Box box = bounds(g.lot);
  const Profile profile = Profiler(g, size).sampled(box.low.y, box.high.y, step);
  const std::vector<double> y = heights_to_try(profile, size.spacing, box.high.y);
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
  std::vector<PackedRow> rows;
  for (std::size_t i = y.size(); i > 0; i = static_cast<std::size_t>(before[i]))
    if (taken[i]) rows.push_back({y[i - 1], free_stretches(g, y[i - 1], size)});
  std::reverse(rows.begin(), rows.end());
  return rows;
}

}  // namespace underlawn
