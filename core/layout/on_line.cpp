// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/on_line.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

constexpr double kStep = 0.25;  // m
constexpr double kFine = 5e-4;  // m
constexpr int kMostSteps = 4000;

using Places = std::vector<Interval>;

class HeadsOnLine {
 public:
  HeadsOnLine(const Segment& line, const QuickLegal& legal, const Wishes& w, double length, int wanted)
      : line_(line),
        along_(unit(line.b - line.a)),
        long_(distance(line.a, line.b)),
        spacing_(std::max(w.spacing, w.trench_width)),
        across_(w.end_gap + w.trench_width),
        length_(length),
        wanted_(wanted),
        legal_(legal) {
    left_ = places(1);
    right_ = places(-1);
  }

  // The lowest place that may be taken, again and again.
  std::vector<Segment> stacked(bool on_left, bool on_right, double from) const {
    return taken(left_, right_, on_left, on_right, from);
  }

  std::vector<Segment> hung(bool on_left, bool on_right, double from) const {
    std::vector<Segment> out = taken(mirrored(left_), mirrored(right_), on_left, on_right, long_ - from);
    for (Segment& t : out) {
      const double at = dot(t.a - line_.a, along_);
      const Point shift = (long_ - 2 * at) * along_;
      t = {t.a + shift, t.b + shift};
    }
    return out;
  }

  double span() const { return long_; }
  double spacing() const { return spacing_; }

 private:
  Segment trench(double at, int side) const {
    const Point head = line_.a + at * along_;
    return {head, head + (side * length_) * left_normal(along_)};
  }

  Places places(int side) const {
    const int steps = std::clamp(static_cast<int>(std::ceil(long_ / kStep)), 1, kMostSteps);
    const auto free = [&](double at) { return legal_.free(trench(at, side)); };
    const auto edge = [&](double open, double shut) {
      while (std::abs(open - shut) > kFine) {
        const double middle = (open + shut) / 2;
        (free(middle) ? open : shut) = middle;
      }
      return open;
    };
    Places out;
    bool was = false;
    for (int i = 0; i <= steps; ++i) {
      const double at = long_ * i / steps, before = long_ * (i - 1) / steps;
      const bool now = free(at);
      if (now && !was) out.push_back({i == 0 ? 0 : edge(at, before), at});
      if (!now && was) out.back().high = edge(before, at);
      if (now) out.back().high = at;
      was = now;
    }
    return out;
  }

  Places mirrored(const Places& places) const {
    Places out;
    for (auto i = places.rbegin(); i != places.rend(); ++i) out.push_back({long_ - i->high, long_ - i->low});
    return out;
  }

  static double lowest(const Places& places, double from) {
    for (const Interval& i : places)
      if (i.high >= from - kFine) return std::max(i.low, std::min(from, i.high));
    return 1e300;
  }

  std::vector<Segment> taken(const Places& left, const Places& right, bool on_left, bool on_right,
                             double from) const {
    std::vector<Segment> out;
    double last_left = -1e300, last_right = -1e300;
    while (static_cast<int>(out.size()) < wanted_) {
      const double l =
          on_left ? lowest(left, std::max({from, last_left + spacing_, last_right + across_})) : 1e300;
      const double r =
          on_right ? lowest(right, std::max({from, last_right + spacing_, last_left + across_})) : 1e300;
      if (std::min(l, r) > long_) break;
      out.push_back(trench(std::min(l, r), l <= r ? 1 : -1));
      (l <= r ? last_left : last_right) = std::min(l, r);
    }
    return out;
  }

  Segment line_;
  Point along_;
  double long_, spacing_, across_, length_;
  int wanted_;
  const QuickLegal& legal_;
  Places left_, right_;
};

}  // namespace

double bearing_across(const Segment& line) {
  const Point n = left_normal(unit(line.b - line.a));
  const double angle = std::atan2(n.y, n.x), positive = angle < 0 ? angle + std::numbers::pi : angle;
  return positive >= std::numbers::pi - 1e-12 ? 0 : positive;
}

std::vector<Arrangement> arrangements_on_line(const Segment& line, const QuickLegal& legal, const Wishes& w,
                                              double length, int wanted, const Approach& approach) {
  std::vector<Arrangement> all;
  if (!(distance(line.a, line.b) > kSamePlace) || wanted < 1) return all;
  const HeadsOnLine heads(line, legal, w, length, wanted);
  const auto add = [&](std::vector<Segment> trenches) {
    const bool known =
        std::any_of(all.begin(), all.end(), [&](const Arrangement& a) { return a.trenches == trenches; });
    if (trenches.empty() || known) return;
    Arrangement a;
    a.bearing = {bearing_across(line), true};
    a.in_line = true;
    const Segment header{trenches.front().a, trenches.back().a};
    a.estimate = distance(header.a, header.b) + approach.distance_to(header);
    a.trenches = std::move(trenches);
    all.push_back(std::move(a));
  };
  for (const auto& [left, right] : {std::pair{true, false}, {false, true}, {true, true}})
    for (double share : {0.0, 0.2, 0.4, 0.6, 0.8}) {
      add(heads.stacked(left, right, share * heads.span()));
      add(heads.hung(left, right, (1 - share) * heads.span()));
    }
  std::stable_sort(all.begin(), all.end(), [](const Arrangement& l, const Arrangement& r) {
    return l.trenches.size() != r.trenches.size() ? l.trenches.size() > r.trenches.size()
                                                  : l.estimate < r.estimate;
  });
  return all;
}

}  // namespace underlawn
