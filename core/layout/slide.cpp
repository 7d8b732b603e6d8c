// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/slide.h"

#include <algorithm>
#include <cmath>

#include "layout/closed_side.h"
#include "layout/given.h"
#include "layout/legality.h"
#include "layout/quick_legal.h"

namespace underlawn {

namespace {

constexpr double kStop = 5e-4;  // m, the bisection's last step
constexpr double kLook = 0.25;  // m between places looked at, of a short way
constexpr int kMostLooks = 40;
constexpr int kMostSlides = 8;
constexpr double kTilts[] = {0, 0.03, -0.03, 0.12, -0.12};  // rad, tried where the trench turns as it moves
constexpr double kShortest = 0.05;                          // m
// To spare beside a bent trench: a stop that only the slack of the proof allows would be found too near.
constexpr double kHair = 2e-3;  // m

Polyline between(const Polyline& from, const Polyline& to, double share) {
  Polyline line(from.size());
  for (std::size_t i = 0; i < from.size(); ++i) line[i] = from[i] + share * (to[i] - from[i]);
  return line;
}

double farthest_move(const Polyline& from, const Polyline& to) {
  double most = 0;
  for (std::size_t i = 0; i < from.size(); ++i) most = std::max(most, distance(from[i], to[i]));
  return most;
}

double off(const Polyline& place, const Polyline& wish) {
  double sum = 0;
  for (std::size_t i = 0; i < place.size(); ++i) sum += dot(place[i] - wish[i], place[i] - wish[i]);
  return sum;
}

std::vector<Polyline> locked_of(const std::vector<Trench>& others) {
  std::vector<Polyline> lines;
  for (const Trench& t : others)
    if (t.locked) lines.push_back(middle_line(t));
  return lines;
}

class Slider {
 public:
  Slider(const Site& site, const Wishes& wishes, const std::vector<Trench>& others)
      : wishes_(wishes),
        site_(with_closed_sides(site, wishes)),
        others_(locked_of(others)),
        quick_(site_, wishes, others_) {}

  // A trench that touches what it keeps off, as it may, is not free by the quicker question, which is
  // stricter.
  void start_at(const Polyline& line) { touching_ = !quickly_free(line); }

  bool proved(const Polyline& line) const {
    return bent_trench_is_legal(site_, line, wishes_.trench_width) &&
           std::all_of(others_.begin(), others_.end(),
                       [&](const Polyline& other) { return bent_pair_is_legal(other, line, wishes_); });
  }

  Polyline furthest(const Polyline& from, const Polyline& to) const {
    const double way = farthest_move(from, to);
    if (way < kStop) return from;
    const int looks = std::clamp(static_cast<int>(std::ceil(way / kLook)), 1, kMostLooks);
    double legal = 0, beyond = 1;
    for (int i = looks; i > 0 && legal == 0; --i) {
      const double share = static_cast<double>(i) / looks;
      if (free(between(from, to, share)))
        legal = share;
      else
        beyond = share;
    }
    if (legal == 1) return to;
    while ((beyond - legal) * way > kStop) {
      const double middle = (legal + beyond) / 2;
      (free(between(from, to, middle)) ? legal : beyond) = middle;
    }
    return between(from, to, legal);
  }

  // Along each thing that stops the trench here; the place nearest the wish.
  Polyline along_what_stops(const Polyline& at, const Polyline& wish) const {
    Polyline best = at;
    const bool turns = distance(wish.front() - at.front(), wish.back() - at.back()) > kStop;
    for (Point way : ways_past(at))
      for (double tilt : kTilts) {
        if (tilt != 0 && !turns) break;
        const Point u = rotated(way, tilt);
        Polyline to = at;
        for (std::size_t i = 0; i < at.size(); ++i) to[i] = at[i] + dot(wish[i] - at[i], u) * u;
        if (off(to, wish) > off(best, wish)) continue;
        const Polyline there = furthest(at, to);
        if (off(there, wish) < off(best, wish) - kStop * kStop) best = there;
      }
    return best;
  }

 private:
  bool free(const Polyline& line) const { return touching_ ? proved(line) : quickly_free(line); }

  bool quickly_free(const Polyline& line) const {
    for (std::size_t i = 1; i < line.size(); ++i)
      if (!quick_.free({line[i - 1], line[i]})) return false;
    // Corners stand out beyond the legs, which are all that was asked for.
    return line.size() == 2 || bent_trench_is_legal(site_, line, wishes_.trench_width + 2 * kHair);
  }

  std::vector<Point> ways_past(const Polyline& at) const {
    std::vector<Point> ways;
    for (std::size_t i = 1; i < at.size(); ++i) quick_.add_ways_past({at[i - 1], at[i]}, ways);
    return ways;
  }

  const Wishes& wishes_;
  Site site_;
  std::vector<Polyline> others_;
  QuickLegal quick_;
  bool touching_ = false;
};

bool is_place(const Polyline& line) {
  for (Point p : line)
    if (!(std::abs(p.x) <= kLargestPlan && std::abs(p.y) <= kLargestPlan)) return false;
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(line[i - 1], line[i]) < kShortest) return false;
  return true;
}

}  // namespace

GivenTrench slid(const Site& site, const Wishes& wishes, const std::vector<Trench>& others,
                 const GivenTrench& from, const GivenTrench& to) {
  const Polyline wish = line_of(to);
  if (!is_place(wish) || !(wishes.trench_width > 0)) return from;
  GivenTrench start = from;
  if (start.bends.size() != to.bends.size()) start.bends = to.bends;
  Polyline at = line_of(start);
  if (!is_place(at) || site.lot.size() < 3) return to;
  Slider slider(site, wishes, others);
  if (!slider.proved(at)) return to;
  slider.start_at(at);
  const Polyline before = at;
  at = slider.furthest(at, wish);
  for (int i = 0; i < kMostSlides; ++i) {
    const Polyline next = slider.along_what_stops(at, wish);
    if (next == at) break;
    at = next;
  }
  if (!slider.proved(at)) at = before;
  GivenTrench out = to;
  out.head = at.front();
  out.end = at.back();
  out.bends.assign(at.begin() + 1, at.end() - 1);
  return out;
}

}  // namespace underlawn
