// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/way_wishes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/keeping.h"
#include "plan/way_words.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr double kTurn = std::numbers::pi;  // directions that differ by it are one

double apart(double a, double b) {
  const double d = std::fmod(std::abs(a - b), kTurn);
  return std::min(d, kTurn - d);
}

// With nothing held to the place of the present field.
Wishes let_go(const Wishes& wishes) {
  Wishes w = wishes;
  w.given.clear();
  forget_shown(w);
  w.header_on.reset();
  w.group_headers.clear();
  w.run_by.clear();
  return w;
}

Wishes let_go_of_trenches(const Wishes& wishes) {
  Wishes w = wishes;
  w.given.clear();
  forget_shown(w);
  return w;
}

Point middle(const Trench& t) {
  return 0.5 * (t.head + t.end);
}

struct Wall {
  int index = -1;
  Point outward;
};

// The wall beyond whose line most of the trenches lie.
std::optional<Wall> field_wall(const Feature& house, const Layout& layout) {
  std::optional<Wall> best;
  int most = 0;
  for (std::size_t i = 0; i < house.points.size(); ++i) {
    const Point a = house.points[i], b = house.points[(i + 1) % house.points.size()];
    if (distance(a, b) < kSamePlace) continue;
    Point out = left_normal(unit(b - a));
    if (contains(house.points, 0.5 * (a + b) + 1e-3 * out)) out = -1.0 * out;
    int beyond = 0;
    for (const Trench& t : layout.trenches) beyond += dot(middle(t) - a, out) > 0;
    if (beyond > most) most = beyond, best = Wall{static_cast<int>(i), out};
  }
  return best;
}

void add_other_side(std::vector<WayWishes>& ways, const Plan& plan, const Outcome& own) {
  if (!plan.site.entry) return;
  const Feature* house = find_feature(plan.site, plan.site.entry->house_id);
  if (house == nullptr || house->points.size() < 3) return;
  const auto wall = field_wall(*house, own.layout);
  if (!wall) return;
  Wishes w = let_go(plan.wishes);
  w.closed.push_back({house->id, wall->index});
  ways.push_back({WayKind::other_side, other_side_words(plan.site, wall->outward), std::move(w)});
}

// Along the lot line and the house walls, then every 15 degrees; the present direction's neighbours left out.
std::vector<double> other_directions(const Plan& plan, double now) {
  std::vector<double> all;
  const auto add = [&](double angle) {
    angle = std::fmod(std::fmod(angle, kTurn) + kTurn, kTurn);
    if (apart(angle, now) < kOtherDirection - 1e-9) return;
    for (double other : all)
      if (apart(angle, other) < 0.03) return;
    all.push_back(angle);
  };
  const auto edges = [&](const Ring& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Point along = ring[(i + 1) % ring.size()] - ring[i];
      if (norm(along) > 3) add(std::atan2(along.y, along.x));
    }
  };
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house) edges(f.points);
  edges(lot_ring(plan.site));
  for (int i = 2; i <= 10; ++i) add(now + i * std::numbers::pi / 12);
  if (all.size() > 9) all.resize(9);
  return all;
}

double dug(const Layout& l) {
  double sum = l.header.length + l.run.length;
  for (const Trench& t : l.trenches) sum += length_of(t);
  return sum;
}

// The best of those directions: most circuits, then least digging.
void add_other_direction(std::vector<WayWishes>& ways, const Plan& plan, const Outcome& own,
                         const std::stop_token& stop) {
  std::optional<double> best;
  std::size_t most = 0;
  double least = 0;
  Wishes w = let_go(plan.wishes);
  for (double angle : other_directions(plan, own.layout.direction)) {
    if (stop.stop_requested()) return;
    w.direction = angle;
    const Layout made = make_layout(plan.site, w, own.coil, stop);
    const std::size_t count = made.trenches.size();
    if (count == 0 || apart(made.direction, own.layout.direction) < kOtherDirection - 1e-6) continue;
    if (count < most || (count == most && dug(made) >= least)) continue;
    most = count;
    least = dug(made);
    best = angle;
  }
  if (!best) return;
  w.direction = best;
  ways.push_back({WayKind::other_direction, other_direction_words(plan.site, *best, own.layout.direction),
                  std::move(w)});
}

void add_groups(std::vector<WayWishes>& ways, const Plan& plan) {
  Wishes w = let_go(plan.wishes);
  if (w.groups == 1 && w.circuits < 2) return;
  w.groups = w.groups == 1 ? 2 : 1;
  ways.push_back({WayKind::groups, groups_words(w.groups), std::move(w)});
}

void add_run_coil(std::vector<WayWishes>& ways, const Plan& plan) {
  Wishes w = let_go_of_trenches(plan.wishes);
  w.coil_in_run = !w.coil_in_run;
  ways.push_back({WayKind::run_coil, run_coil_words(w.coil_in_run), std::move(w)});
}

void add_fewer_deeper(std::vector<WayWishes>& ways, const Plan& plan) {
  Wishes w = let_go_of_trenches(plan.wishes);
  if (w.circuits < 2) return;
  w.circuits -= std::max(1, w.circuits / 4);
  w.trench_depth += plan.units == UnitSystem::us ? 2 * 0.3048 : 0.6;
  ways.push_back({WayKind::fewer_deeper, fewer_deeper_words(plan.wishes, w, plan.units), std::move(w)});
}

void add_upright(std::vector<WayWishes>& ways, const Plan& plan) {
  if (is_straight(plan.wishes.pattern)) return;
  Wishes w = let_go_of_trenches(plan.wishes);
  const bool stand = w.pattern == CoilPattern::flat_coil;
  w.pattern = stand ? CoilPattern::upright_coil : CoilPattern::flat_coil;
  w.trench_width = usual_trench_width(w.pattern);
  ways.push_back({WayKind::upright, upright_words(w, plan.units), std::move(w)});
}

void add_metres(std::vector<WayWishes>& ways, const Plan& plan) {
  if (plan.wishes.aim == Aim::metres) return;
  Wishes w = let_go(plan.wishes);
  w.aim = Aim::metres;
  ways.push_back({WayKind::metres, metres_words(w, plan.units), std::move(w)});
}

}  // namespace

std::vector<WayWishes> other_ways(const Plan& plan, const Outcome& own, const std::stop_token& stop) {
  std::vector<WayWishes> ways;
  add_other_side(ways, plan, own);
  add_other_direction(ways, plan, own, stop);
  add_groups(ways, plan);
  add_run_coil(ways, plan);
  add_fewer_deeper(ways, plan);
  add_upright(ways, plan);
  add_metres(ways, plan);
  return ways;
}

}  // namespace underlawn
