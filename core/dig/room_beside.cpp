// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/room_beside.h"

#include <algorithm>

namespace underlawn {

namespace {

constexpr int kAll = 4;  // quarters

double away(const Polygon& part, Point p) {
  if (contains(Region{part}, p)) return 0;
  double least = distance(Segment{part.outer.back(), part.outer.front()}, p);
  for (std::size_t i = 1; i < part.outer.size(); ++i)
    least = std::min(least, distance(Segment{part.outer[i - 1], part.outer[i]}, p));
  return least;
}

}  // namespace

Region part_joining(const Region& region, Point from, const std::vector<Point>& to) {
  if (region.empty()) return {};
  const auto part = std::min_element(region.begin(), region.end(), [&](const Polygon& a, const Polygon& b) {
    return away(a, from) < away(b, from);
  });
  Region joined{*part};
  const bool any = std::any_of(to.begin(), to.end(), [&](Point p) { return contains(joined, p); });
  return any ? joined : Region{};
}

RoomBeside::RoomBeside(const DigGround& lot, Region ground, double width)
    : beside_(lot.beside), ground_(std::move(ground)), width_(width) {
  std::stable_sort(beside_.begin(), beside_.end(),
                   [](const auto& a, const auto& b) { return a.off > b.off; });
}

const Region& RoomBeside::at(const Shares& shares) const {
  const auto known = known_.find(shares);
  if (known != known_.end()) return known->second;
  std::vector<Region> off;
  for (std::size_t i = 0; i < beside_.size(); ++i)
    if (shares[i] > 0) off.push_back(grown(beside_[i].area, width_ / 2 + shares[i] * beside_[i].off / kAll));
  return known_[shares] = off.empty() ? ground_ : subtract(ground_, unite(off));
}

Region RoomBeside::widest(const Region& taken) const {
  return subtract(at(Shares(beside_.size(), kAll)), taken);
}

Region RoomBeside::joining(const Shares& shares, const Region& taken, Point from,
                           const std::vector<Point>& to) const {
  return part_joining(subtract(at(shares), taken), from, to);
}

Region RoomBeside::widest_way(const Region& taken, Point from, const std::vector<Point>& to) const {
  if (!last_.empty())
    if (Region same = joining(last_, taken, from, to); !same.empty()) return same;
  for (int quarters = kAll - 1; quarters > 0; --quarters) {
    Shares shares(beside_.size(), quarters);
    Region best = joining(shares, taken, from, to);
    if (best.empty()) continue;
    for (int& share : shares) {
      share = kAll;
      Region more = joining(shares, taken, from, to);
      if (more.empty())
        share = quarters;
      else
        best = std::move(more);
    }
    last_ = shares;
    return best;
  }
  return {};
}

}  // namespace underlawn
