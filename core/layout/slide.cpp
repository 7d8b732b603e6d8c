// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/slide.h"

#include "layout/closed_side.h"
#include "layout/legality.h"
#include "layout/quick_distance.h"
#include "layout/zones.h"

namespace underlawn {

namespace {

constexpr double kSpare = 5e-4;     // m kept beyond what is asked: what is tried here is proved afterwards
constexpr double kStop = 5e-4;      // m, the bisection's last step
constexpr double kTouching = 5e-3;  // m: nearer than this to what is asked, it is what stops the trench
constexpr double kLook = 0.25;      // m between places looked at, of a short way
constexpr int kMostLooks = 40;
constexpr int kMostSlides = 8;
constexpr double kTilts[] = {0, 0.03, -0.03, 0.12, -0.12};  // rad, tried where the trench turns as it moves
constexpr double kShortest = 0.05;  // m

// Head, bends and end.
Polyline line_of_place(const GivenTrench& t) {
  Polyline line = {t.head};
  line.insert(line.end(), t.bends.begin(), t.bends.end());
  line.push_back(t.end);
  return line;
}

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

class Slider {
 public:
  Slider(const Site& site, const Wishes& wishes, const std::vector<Trench>& others)
      : wishes_(wishes), site_(with_closed_sides(site, wishes)), ground_(trench_ground(site_)) {
    for (const Trench& t : others)
      if (t.locked) others_.push_back(middle_line(t));
  }

  bool proved(const Polyline& line) const {
    for (std::size_t i = 1; i < line.size(); ++i)
      if (!trench_is_legal(site_, Segment{line[i - 1], line[i]}, wishes_.trench_width)) return false;
    for (const Polyline& other : others_)
      for (std::size_t j = 1; j < other.size(); ++j)
        for (std::size_t i = 1; i < line.size(); ++i)
          if (!pair_is_legal(Segment{other[j - 1], other[j]}, Segment{line[i - 1], line[i]}, wishes_))
            return false;
    return true;
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
  double width() const { return wishes_.trench_width; }

  bool free(const Polyline& line) const {
    for (std::size_t i = 1; i < line.size(); ++i)
      if (!leg_is_free({line[i - 1], line[i]})) return false;
    return true;
  }

  bool leg_is_free(const Segment& leg) const {
    if (distance(leg.a, leg.b) < kShortest) return false;
    const Ring floor = rectangle_along(leg, width());
    const Box box = bounds_of(floor);
    for (const Capsule& c : ground_.capsules)
      if (in_way(floor, box, c)) return false;
    if (!is_open(ground_, 0.5 * (leg.a + leg.b))) return false;
    return std::all_of(others_.begin(), others_.end(),
                       [&](const Polyline& other) { return keeps_off(leg, floor, other); });
  }

  static Box bounds_of(const Ring& ring) {
    Box box{ring.front(), ring.front()};
    for (Point p : ring) {
      box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
      box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    }
    return box;
  }

  static bool in_way(const Ring& floor, const Box& box, const Capsule& c) {
    const double reach = c.reach + kSpare;
    if (std::max(c.a.x, c.b.x) + reach < box.low.x || std::min(c.a.x, c.b.x) - reach > box.high.x ||
        std::max(c.a.y, c.b.y) + reach < box.low.y || std::min(c.a.y, c.b.y) - reach > box.high.y)
      return false;
    const Segment way = quick_way(floor, {c.a, c.b});
    return dot(way.b - way.a, way.b - way.a) < reach * reach || quick_inside(floor, c.a);
  }

  // The pair rule of legality.h, its middle lines and floors measured quickly.
  bool keeps_off(const Segment& leg, const Ring& floor, const Polyline& other) const {
    for (std::size_t j = 1; j < other.size(); ++j) {
      const Segment o{other[j - 1], other[j]};
      const double apart = quick_distance(o, leg);
      if (apart >= std::max(wishes_.spacing, wishes_.end_gap + 2 * width()) + kSpare) continue;
      if (beside(o, leg)) {
        if (apart < wishes_.spacing + kSpare) return false;
      } else if (floors_apart(floor, rectangle_along(o, width())) < wishes_.end_gap + kSpare) {
        return false;
      }
    }
    return true;
  }

  static bool beside(const Segment& a, const Segment& b) {
    const double long_ = distance(a.a, a.b);
    const Point u = unit(a.b - a.a);
    if (std::abs(dot(u, unit(b.b - b.a))) < std::cos(std::numbers::pi / 6)) return false;
    const double one = dot(b.a - a.a, u), two = dot(b.b - a.a, u);
    return std::min(long_, std::max(one, two)) - std::max(0.0, std::min(one, two)) > kLegalSlack;
  }

  static double floors_apart(const Ring& a, const Ring& b) {
    if (quick_inside(a, b.front()) || quick_inside(b, a.front())) return 0;
    double least = 1e300;
    for (std::size_t i = 0; i < b.size(); ++i) {
      const Segment way = quick_way(a, {b[i], b[(i + 1) % b.size()]});
      least = std::min(least, distance(way.a, way.b));
    }
    return least;
  }

  // Directions in which the trench could go on past what it touches.
  std::vector<Point> ways_past(const Polyline& at) const {
    std::vector<Point> ways;
    for (std::size_t i = 1; i < at.size(); ++i) {
      const Segment leg{at[i - 1], at[i]};
      const Ring floor = rectangle_along(leg, width());
      for (const Capsule& c : ground_.capsules) {
        const Segment way = quick_way(floor, {c.a, c.b});
        if (distance(way.a, way.b) > c.reach + kTouching) continue;
        add_way(ways, c.b - c.a);
        add_way(ways, left_normal(way.b - way.a));
      }
      for (const Polyline& other : others_)
        for (std::size_t j = 1; j < other.size(); ++j) {
          const double near = std::max(wishes_.spacing, wishes_.end_gap + 2 * width()) + kTouching;
          if (quick_distance({other[j - 1], other[j]}, leg) > near) continue;
          add_way(ways, other[j] - other[j - 1]);
          add_way(ways, left_normal(other[j] - other[j - 1]));
        }
    }
    return ways;
  }

  static void add_way(std::vector<Point>& ways, Point along) {
    if (dot(along, along) < 1e-12) return;
    const Point u = unit(along);
    if (std::none_of(ways.begin(), ways.end(), [u](Point w) { return std::abs(cross(w, u)) < 1e-6; }))
      ways.push_back(u);
  }

  const Wishes& wishes_;
  Site site_;
  Ground ground_;
  std::vector<Polyline> others_;
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
  const Polyline wish = line_of_place(to);
  if (!is_place(wish) || !(wishes.trench_width > 0)) return from;
  GivenTrench start = from;
  if (start.bends.size() != to.bends.size()) start.bends = to.bends;
  Polyline at = line_of_place(start);
  if (!is_place(at) || site.lot.size() < 3) return to;
  const Slider slider(site, wishes, others);
  if (!slider.proved(at)) return to;
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
