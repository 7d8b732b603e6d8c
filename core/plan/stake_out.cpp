// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/stake_out.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/say.h"
#include "layout/crossing_tags.h"
#include "plan/tape.h"

namespace underlawn {

namespace {

struct Stake {
  std::string name, key;
  Point at;
};

Stake* stake_near(std::vector<Stake>& stakes, Point p) {
  const auto at = std::find_if(stakes.begin(), stakes.end(),
                               [&](const Stake& s) { return distance(s.at, p) <= kSameStake; });
  return at == stakes.end() ? nullptr : &*at;
}

void add_trench_point(std::vector<Stake>& stakes, std::string name, std::string key, Point at) {
  if (Stake* known = stake_near(stakes, at)) {
    known->name += ", " + name;
    known->key += ", " + key;
  } else {
    stakes.push_back({std::move(name), std::move(key), at});
  }
}

// Points that a trench already stakes get no second name.
void add_line(std::vector<Stake>& stakes, bool header, int& number, const Polyline& line, std::size_t from) {
  for (std::size_t i = from; i < line.size(); ++i) {
    if (stake_near(stakes, line[i]) != nullptr) continue;
    ++number;
    stakes.push_back({header ? say("header {}", number) : say("run {}", number),
                      (header ? "header " : "run ") + std::to_string(number), line[i]});
  }
}

// Where something buried is crossed; its own stake even where one stands there already.
void add_crossings(std::vector<Stake>& stakes, const Site& site, const Layout& layout) {
  for (std::size_t i = 0; i < layout.crossings.size(); ++i) {
    const std::string tag = crossing_tag(site, layout, i);
    if (!tag.empty()) add_trench_point(stakes, tag, tag, layout.crossings[i].at);
  }
}

std::vector<Stake> stakes_of(const Site& site, const Layout& layout) {
  std::vector<Stake> stakes;
  for (const Trench& t : layout.trenches) {
    const std::string number = std::to_string(t.number);
    add_trench_point(stakes, say("{} head", number), number + " head", t.head);
    for (std::size_t i = 0; i < t.bends.size(); ++i)
      add_trench_point(stakes, say("{} bend {}", number, i + 1), number + " bend " + std::to_string(i + 1),
                       t.bends[i]);
    add_trench_point(stakes, say("{} end", number), number + " end", t.end);
  }
  int number = 0;
  for (const Polyline& leg : layout.header.legs) add_line(stakes, true, number, leg, 0);
  number = 0;
  add_line(stakes, false, number, layout.run.line, 1);
  add_crossings(stakes, site, layout);
  return stakes;
}

struct Pair {
  std::size_t first = 0, second = 0;
  double error = std::numeric_limits<double>::infinity();
  bool seen = false, in_reach = false;
};

bool better(const Pair& a, const Pair& b) {
  if (a.seen != b.seen) return a.seen;
  if (a.in_reach != b.in_reach) return a.in_reach;
  return a.error < b.error;
}

bool within_tape(Point a, Point b) {
  return distance(a, b) <= kLongestTape;
}

Pair best_pair(const std::vector<HouseCorner>& corners, const TapeGround& ground, Point at) {
  std::vector<bool> sees;
  std::vector<TapeWay> ways;
  for (const HouseCorner& c : corners) {
    sees.push_back(tape_is_free(ground, c.at, at));
    ways.push_back(tape_way(ground, c.at, at));
  }
  Pair best;
  for (std::size_t i = 0; i < corners.size(); ++i)
    for (std::size_t j = i + 1; j < corners.size(); ++j) {
      const Point a = corners[i].at, b = corners[j].at;
      if (distance(a, b) <= kSameStake) continue;
      const Pair pair = {i, j, tape_worth(at, a, b, ways[i], ways[j]), sees[i] && sees[j],
                         within_tape(at, a) && within_tape(at, b)};
      if (better(pair, best)) best = pair;
    }
  return best;
}

Tie tie_of(const Stake& stake, const HouseCorner& a, const HouseCorner& b, bool seen) {
  Tie tie;
  tie.point = stake.name;
  tie.key = stake.key;
  tie.at = stake.at;
  tie.first = a.tag;
  tie.second = b.tag;
  tie.first_distance = distance(stake.at, a.at);
  tie.second_distance = distance(stake.at, b.at);
  tie.cut = seen ? cut_angle(stake.at, a.at, b.at) : 0;
  tie.left_of_base = cross(b.at - a.at, stake.at - a.at) >= 0;
  return tie;
}

std::optional<Point> corner_at(const StakeOut& stake_out, const std::string& tag) {
  for (const HouseCorner& c : stake_out.corners)
    if (c.tag == tag) return c.at;
  return std::nullopt;
}

}  // namespace

StakeOut make_stake_out(const Site& site, const Layout& layout) {
  StakeOut out;
  out.corners = house_corners(site);
  if (out.corners.size() < 2) return out;
  const TapeGround ground = tape_ground(site);
  for (const Stake& stake : stakes_of(site, layout)) {
    const Pair pair = best_pair(out.corners, ground, stake.at);
    if (pair.first == pair.second) continue;
    out.ties.push_back(tie_of(stake, out.corners[pair.first], out.corners[pair.second], pair.seen));
  }
  return out;
}

std::optional<Point> find_point_from_tie(const StakeOut& stake_out, const Tie& tie) {
  const auto a = corner_at(stake_out, tie.first), b = corner_at(stake_out, tie.second);
  if (!a || !b || distance(*a, *b) < kSamePlace) return std::nullopt;
  const double base = distance(*a, *b);
  const double d1 = tie.first_distance, d2 = tie.second_distance;
  const double along = (d1 * d1 - d2 * d2 + base * base) / (2 * base);
  const double square = d1 * d1 - along * along;
  if (!(square > -kSameStake * std::max(1.0, d1))) return std::nullopt;
  const double off = std::sqrt(std::max(0.0, square)) * (tie.left_of_base ? 1 : -1);
  const Point ahead = unit(*b - *a);
  return *a + along * ahead + off * left_normal(ahead);
}

Point point_from_tie(const StakeOut& stake_out, const Tie& tie) {
  constexpr double nowhere = std::numeric_limits<double>::quiet_NaN();
  return find_point_from_tie(stake_out, tie).value_or(Point{nowhere, nowhere});
}

}  // namespace underlawn
