// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/tie_check.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/record/taping.h"
#include "plan/tape.h"

namespace underlawn {

namespace {

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

// Of a second pair, from what weighs most: tapes through planted ground, the neighbour's land, a corner taped
// from twice; each more than any error of a tape.
double worth_as_check(const TapeGround& ground, Point at, Point a, Point b, int same) {
  const TapeWay first = tape_way(ground, a, at), second = tape_way(ground, b, at);
  const int planted = !first.off_planted || !second.off_planted, off_lot = !first.on_lot || !second.on_lot;
  return tape_worth(at, a, b, first, second) + 1e6 * (4 * planted + 2 * off_lot + same);
}

// The unit vectors from the corners of the pair to the point, the corner's tag with each.
using Pull = std::pair<std::string, Point>;
std::vector<Pull> pulls(const StakeOut& stake_out, const Tie& tie) {
  std::vector<Pull> all;
  for (const std::string& tag : {tie.first, tie.second}) {
    const auto corner = std::ranges::find(stake_out.corners, tag, &HouseCorner::tag);
    if (corner != stake_out.corners.end()) all.emplace_back(tag, unit(tie.at - corner->at));
  }
  return all;
}

bool same_place(const HouseCorner& a, const HouseCorner& b) {
  return distance(a.at, b.at) <= kSameStake;
}

// Corners of one building, in the order of their tags.
std::vector<HouseCorner> corners_of(const Feature& house, const StakeOut& stake_out) {
  std::vector<HouseCorner> own;
  for (const HouseCorner& c : stake_out.corners)
    if (std::find(house.points.begin(), house.points.end(), c.at) != house.points.end()) own.push_back(c);
  return own;
}

}  // namespace

bool shares_corner(const Tie& first, const Tie& second) {
  return second.first == first.first || second.first == first.second || second.second == first.first ||
         second.second == first.second;
}

double shown_in_check(const StakeOut& stake_out, const Tie& first, const Tie& second) {
  const std::vector<Pull> own = pulls(stake_out, first), check = pulls(stake_out, second);
  if (own.size() < 2) return 0;
  const double sine = std::abs(cross(own[0].second, own[1].second));
  const auto shown = [&](const Pull& held) {
    double most = 0;
    for (const auto& [tag, u] : check)
      if (tag != first.first && tag != first.second) most = std::max(most, std::abs(cross(u, held.second)));
    return most;
  };
  return sine > 0 ? std::min(shown(own[0]), shown(own[1])) / sine : 1;
}

std::optional<Tie> second_tie(const Site& site, const StakeOut& stake_out, const Tie& first) {
  const TapeGround ground = tape_ground(site);
  std::vector<HouseCorner> seeing;
  for (const HouseCorner& c : stake_out.corners)
    if (distance(c.at, first.at) <= kLongestTape && tape_is_free(ground, c.at, first.at)) seeing.push_back(c);
  std::optional<Tie> best;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < seeing.size(); ++i)
    for (std::size_t j = i + 1; j < seeing.size(); ++j) {
      const HouseCorner &a = seeing[i], &b = seeing[j];
      const int same = shared(first, a, b);
      if (same == 2 || same_place(a, b)) continue;
      if (cut_angle(first.at, a.at, b.at) < kFlattestCut) continue;
      const double cost = worth_as_check(ground, first.at, a.at, b.at, same);
      if (cost >= least) continue;
      Tie tie = tie_from(first, a, b);
      if (shown_in_check(stake_out, first, tie) < kLeastShown) continue;
      least = cost;
      best = std::move(tie);
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

// m beyond the nearer end of the wall; 0 between its ends.
double drawn_out(const BaseLine& base, const Offset& offset) {
  return std::max({0.0, -offset.along, offset.along - distance(base.from.at, base.to.at)});
}

bool offset_is_free(const TapeGround& ground, const BaseLine& base, Point p) {
  const Offset offset = offset_from(base, p);
  const Point station = point_from_offset(base, {offset.along, 0});
  const Point end = offset.along < 0 ? base.from.at : base.to.at;
  const bool beyond = drawn_out(base, offset) > 0;
  const auto clear = [&](Point a, Point b) {
    return tape_is_free(ground, a, b) && stays_on_lot(ground, a, b) && stays_off_planted(ground, a, b);
  };
  return (!beyond || clear(end, station)) && clear(station, p);
}

double worth_as_base(const TapeGround& ground, const StakeOut& stake_out, const BaseLine& wall) {
  const double long_ = distance(wall.from.at, wall.to.at);
  double sum = 0;
  for (const Tie& tie : stake_out.ties) {
    if (!offset_is_free(ground, wall, tie.at)) continue;
    const Offset offset = offset_from(wall, tie.at);
    sum += long_ / (long_ + 2 * drawn_out(wall, offset) + std::abs(offset.off));
  }
  return sum;
}

}  // namespace

bool offset_is_free(const Site& site, const BaseLine& base, Point p) {
  return offset_is_free(tape_ground(site), base, p);
}

std::vector<Wall> building_walls(const Site& site, const StakeOut& stake_out) {
  std::vector<Wall> all;
  for (const Feature& f : site.features) {
    if (f.kind != FeatureKind::house) continue;
    const std::vector<HouseCorner> own = corners_of(f, stake_out);
    for (std::size_t i = 0; i < own.size() && own.size() > 1; ++i)
      if (!same_place(own[i], own[(i + 1) % own.size()]))
        all.push_back({{own[i], own[(i + 1) % own.size()]}, f.id});
  }
  return all;
}

std::optional<BaseLine> base_line(const Site& site, const StakeOut& stake_out) {
  const TapeGround ground = tape_ground(site);
  std::optional<BaseLine> best;
  double most = -1;
  for (const Wall& wall : building_walls(site, stake_out)) {
    const double value = worth_as_base(ground, stake_out, wall.line);
    if (value <= most) continue;
    best = wall.line;
    most = value;
  }
  if (best && best->to.tag.size() == best->from.tag.size() && best->to.tag < best->from.tag)
    std::swap(best->from, best->to);
  return best;
}

std::optional<WallMark> entry_on_wall(const Site& site, const StakeOut& stake_out) {
  if (!site.entry) return std::nullopt;
  const Point p = site.entry->at;
  std::optional<WallMark> best;
  double least = kEntryReach;
  for (const Wall& wall : building_walls(site, stake_out)) {
    const Offset offset = offset_from(wall.line, p);
    const double away = std::hypot(offset.off, drawn_out(wall.line, offset));
    if (wall.house_id != site.entry->house_id || away > least) continue;
    least = away;
    best =
        WallMark{wall.line.from, wall.line.to, distance(p, wall.line.from.at), distance(p, wall.line.to.at)};
  }
  return best;
}

namespace {

// The corner taped from the best two of `from`.
std::optional<Tie> best_tie(const TapeGround& ground, const std::vector<HouseCorner>& from,
                            const HouseCorner& corner) {
  std::optional<Tie> best;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < from.size(); ++i)
    for (std::size_t j = i + 1; j < from.size(); ++j) {
      const bool seen =
          tape_is_free(ground, from[i].at, corner.at) && tape_is_free(ground, from[j].at, corner.at);
      const double cost =
          tape_worth(corner.at, from[i].at, from[j].at, tape_way(ground, from[i].at, corner.at),
                     tape_way(ground, from[j].at, corner.at));
      if (!seen || same_place(from[i], from[j]) || cost >= least) continue;
      least = cost;
      Tie like;
      like.point = corner.tag;
      like.at = corner.at;
      best = tie_from(like, from[i], from[j]);
    }
  return best;
}

}  // namespace

std::vector<Tie> building_ties(const Site& site, const StakeOut& stake_out) {
  const TapeGround ground = tape_ground(site);
  std::vector<Tie> all;
  std::vector<HouseCorner> first;
  for (const Feature& f : site.features) {
    if (f.kind != FeatureKind::house) continue;
    const std::vector<HouseCorner> own = corners_of(f, stake_out);
    if (first.empty()) {
      first = own;
      continue;
    }
    std::vector<Tie> ties;
    for (const HouseCorner& c : own)
      if (const auto tie = best_tie(ground, first, c)) ties.push_back(*tie);
    std::stable_sort(ties.begin(), ties.end(), [](const Tie& a, const Tie& b) {
      return a.first_distance + a.second_distance < b.first_distance + b.second_distance;
    });
    if (ties.size() > 2) ties.resize(2);
    all.insert(all.end(), ties.begin(), ties.end());
  }
  return all;
}

}  // namespace underlawn
