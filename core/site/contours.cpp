// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "site/terrain.h"

namespace underlawn {

namespace {

using Ends = std::pair<int, int>;  // of a triangle's side, smaller corner first

// One height: sides of triangles it crosses, and which two of a triangle are joined.
class Level {
 public:
  Level(const Terrain& terrain, double height) : terrain_(terrain), height_(height) {
    for (const Triangle& t : terrain.triangles()) join_in(t);
  }

  std::vector<Polyline> lines() {
    std::vector<Polyline> all;
    for (const auto& [side, others] : joined_)
      if (others.size() == 1 && !seen_.contains(side)) all.push_back(from(side));
    for (const auto& [side, others] : joined_)
      if (!seen_.contains(side)) {
        all.push_back(from(side));
        all.back().push_back(all.back().front());
      }
    return all;
  }

 private:
  const SpotHeight& corner(int i) const { return terrain_.heights()[static_cast<std::size_t>(i)]; }
  bool above(int i) const { return corner(i).height >= height_; }

  void join_in(const Triangle& t) {
    std::vector<Ends> crossed;
    for (std::size_t k = 0; k < 3; ++k) {
      const int a = t.corners[k], b = t.corners[(k + 1) % 3];
      if (above(a) != above(b)) crossed.push_back(std::minmax(a, b));
    }
    if (crossed.size() != 2) return;
    joined_[crossed[0]].push_back(crossed[1]);
    joined_[crossed[1]].push_back(crossed[0]);
  }

  Point on(Ends side) const {
    const SpotHeight &a = corner(side.first), &b = corner(side.second);
    return a.at + (height_ - a.height) / (b.height - a.height) * (b.at - a.at);
  }

  Polyline from(Ends side) {
    Polyline line;
    for (const Ends* next = &side; next != nullptr;) {
      const Ends now = *next;
      seen_.insert(now);
      line.push_back(on(now));
      next = nullptr;
      for (const Ends& other : joined_.at(now))
        if (!seen_.contains(other)) next = &other;
    }
    return line;
  }

  const Terrain& terrain_;
  double height_;
  std::map<Ends, std::vector<Ends>> joined_;
  std::set<Ends> seen_;
};

}  // namespace

std::vector<Contour> contours(const Terrain& terrain, double interval) {
  std::vector<Contour> all;
  if (!(interval > 0) || !terrain.is_known()) return all;
  const double first = std::ceil(terrain.lowest() / interval),
               last = std::floor(terrain.highest() / interval);
  if (!(last - first < kMostContourLevels)) return all;
  for (double k = first; k <= last; ++k)
    for (Polyline& line : Level(terrain, k * interval).lines())
      all.push_back({k * interval, std::move(line)});
  return all;
}

}  // namespace underlawn
