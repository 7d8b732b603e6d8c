// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/join_more.h"

#include <algorithm>

#include "layout/fewer_bends.h"
#include "layout/in_steps.h"

namespace underlawn {

namespace {

constexpr double kOn = 1e-3;           // m
constexpr std::size_t kMostTried = 5;  // places a leg could start from

class MoreLegs {
 public:
  MoreLegs(const Conduits& conduits, Point root, Connection& made)
      : router_(conduits.free, conduits.dear, kBend), root_(root), made_(made) {}

  void join(std::vector<Point> heads) {
    while (!heads.empty()) {
      const auto next = std::min_element(heads.begin(), heads.end(), [&](Point l, Point r) {
        return in_steps(distance(l, starts(l).front())) < in_steps(distance(r, starts(r).front()));
      });
      join_one(*next);
      heads.erase(next);
    }
  }

 private:
  // Places on the header to start from, and the run's end: the nearest first.
  std::vector<Point> starts(Point head) const {
    std::vector<Point> all;
    if (!made_.run.line.empty())
      all.push_back(made_.run.line.back());
    else if (made_.header.legs.empty())
      all.push_back(root_);
    for (const Polyline& leg : made_.header.legs)
      for (std::size_t i = 1; i < leg.size(); ++i) {
        all.push_back(nearest_on({leg[i - 1], leg[i]}, head));
        all.push_back(leg[i - 1]);
        all.push_back(leg[i]);
      }
    std::stable_sort(all.begin(), all.end(), [head](Point l, Point r) {
      return in_steps(distance(l, head)) < in_steps(distance(r, head));
    });
    all.erase(std::unique(all.begin(), all.end(), [](Point l, Point r) { return distance(l, r) < kOn; }),
              all.end());
    if (all.size() > kMostTried) all.resize(kMostTried);
    return all;
  }

  void join_one(Point head) {
    std::optional<Route> best;
    for (Point from : starts(head)) {
      if (distance(from, head) < kOn) {
        ++made_.joined;
        return;
      }
      auto route = router_.route(from, head);
      if (route && route->line.size() > 1 && (!best || route->cost < best->cost - kOn))
        best = std::move(route);
    }
    if (!best) return;
    Polyline leg = with_fewer_bends(best->line, router_.free());
    made_.header.length += length(leg);
    made_.cost += best->cost;
    made_.header.legs.push_back(std::move(leg));
    ++made_.joined;
  }

  Router router_;
  Point root_;
  Connection& made_;
};

}  // namespace

void join_more(const Conduits& conduits, Point root, const std::vector<Point>& heads,
               Connection& connection) {
  if (!heads.empty()) MoreLegs(conduits, root, connection).join(heads);
}

}  // namespace underlawn
