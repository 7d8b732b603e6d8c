// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/tie_check.h"

#include <limits>

#include "plan/tape.h"

namespace underlawn {

namespace {

std::vector<Ring> house_rings(const Site& site) {
  std::vector<Ring> rings;
  for (const Feature& f : site.features)
    if (f.kind == FeatureKind::house) rings.push_back(f.points);
  return rings;
}

int shared(const Tie& tie, const HouseCorner& a, const HouseCorner& b) {
  const auto in_tie = [&](const HouseCorner& c) { return c.tag == tie.first || c.tag == tie.second; };
  return static_cast<int>(in_tie(a)) + static_cast<int>(in_tie(b));
}

Tie tie_from(const Tie& like, const HouseCorner& a, const HouseCorner& b) {
  Tie tie = like;
  tie.first = a.tag;
  tie.second = b.tag;
  tie.first_distance = distance(like.at, a.at);
  tie.second_distance = distance(like.at, b.at);
  tie.cut = cut_angle(like.at, a.at, b.at);
  tie.left_of_base = cross(b.at - a.at, like.at - a.at) >= 0;
  return tie;
}

}  // namespace

std::optional<Tie> second_tie(const Site& site, const StakeOut& stake_out, const Tie& first) {
  const std::vector<Ring> houses = house_rings(site);
  std::vector<HouseCorner> seeing;
  for (const HouseCorner& c : stake_out.corners)
    if (distance(c.at, first.at) <= kLongestTape && tape_is_free(houses, c.at, first.at)) seeing.push_back(c);
  std::optional<Tie> best;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < seeing.size(); ++i)
    for (std::size_t j = i + 1; j < seeing.size(); ++j) {
      const HouseCorner &a = seeing[i], &b = seeing[j];
      const int same = shared(first, a, b);
      if (same == 2 || distance(a.at, b.at) <= kSameStake) continue;
      if (cut_angle(first.at, a.at, b.at) < kLeastCheckCut) continue;
      // A shared corner weighs more than any error of a tape.
      const double cost = expected_error(first.at, a.at, b.at) + 1e6 * same;
      if (cost >= least) continue;
      least = cost;
      best = tie_from(first, a, b);
    }
  return best;
}

Offset offset_from(const BaseLine& base, Point p) {
  const Point ahead = unit(base.to.at - base.from.at);
  return {dot(p - base.from.at, ahead), dot(p - base.from.at, left_normal(ahead))};
}

Point point_from_offset(const BaseLine& base, const Offset& offset) {
  const Point ahead = unit(base.to.at - base.from.at);
  return base.from.at + offset.along * ahead + offset.off * left_normal(ahead);
}

namespace {

// Corners go round their house counter-clockwise, so that outside lies to the right of a wall.
int stakes_outside(const StakeOut& stake_out, const BaseLine& wall) {
  return static_cast<int>(std::count_if(stake_out.ties.begin(), stake_out.ties.end(), [&](const Tie& t) {
    return offset_from(wall, t.at).off < -kSameStake;
  }));
}

std::vector<BaseLine> walls(const Site& site, const StakeOut& stake_out) {
  std::vector<BaseLine> all;
  for (const Ring& house : house_rings(site)) {
    std::vector<HouseCorner> own;
    for (const HouseCorner& c : stake_out.corners)
      if (std::find(house.begin(), house.end(), c.at) != house.end()) own.push_back(c);
    for (std::size_t i = 0; i < own.size() && own.size() > 1; ++i)
      if (distance(own[i].at, own[(i + 1) % own.size()].at) > kSameStake)
        all.push_back({own[i], own[(i + 1) % own.size()]});
  }
  return all;
}

}  // namespace

std::optional<BaseLine> base_line(const Site& site, const StakeOut& stake_out) {
  std::optional<BaseLine> best;
  int most = -1;
  double longest = 0;
  for (const BaseLine& wall : walls(site, stake_out)) {
    const int outside = stakes_outside(stake_out, wall);
    const double long_ = distance(wall.from.at, wall.to.at);
    if (outside < most || (outside == most && long_ <= longest + kSameStake)) continue;
    best = wall;
    most = outside;
    longest = long_;
  }
  if (best && best->to.tag.size() == best->from.tag.size() && best->to.tag < best->from.tag)
    std::swap(best->from, best->to);
  return best;
}

}  // namespace underlawn
