// SPDX-License-Identifier: GPL-3.0-or-later
// A first, plain form of the shortest way: Dijkstra over all corners. To be replaced.
#include <algorithm>
#include <cmath>

#include "plane/route.h"

namespace underlawn {
namespace {

double inside_length(const Region& r, Segment s) {
  const int n = 64;
  int in = 0;
  for (int i = 0; i < n; ++i) in += contains(r, s.a + (i + 0.5) / n * (s.b - s.a));
  return distance(s.a, s.b) * in / n;
}

}  // namespace

std::optional<Route> shortest_route(const RouteRequest& q) {
  std::vector<Point> nodes = {q.from, q.to};
  const auto take = [&](const Region& r) {
    for (const Polygon& p : r) {
      for (Point c : p.outer) nodes.push_back(c);
      for (const Ring& h : p.holes)
        for (Point c : h) nodes.push_back(c);
    }
  };
  take(q.free);
  const Region free = grown(q.free, 1e-3);
  std::vector<double> cost(nodes.size(), 1e300);
  std::vector<int> before(nodes.size(), -1);
  std::vector<bool> done(nodes.size(), false);
  cost[0] = 0;
  for (;;) {
    int at = -1;
    for (std::size_t i = 0; i < nodes.size(); ++i)
      if (!done[i] && cost[i] < 1e299 && (at < 0 || cost[i] < cost[at])) at = static_cast<int>(i);
    if (at < 0 || at == 1) break;
    done[at] = true;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      if (done[i]) continue;
      const Segment leg{nodes[at], nodes[i]};
      double c = cost[at] + distance(leg.a, leg.b) + (at ? q.per_bend : 0);
      if (c >= cost[i] || !contains(free, leg)) continue;
      for (const DearGround& d : q.dear) {
        const double inside = inside_length(d.region, leg);
        c += d.per_metre * inside + (inside > 0 ? d.per_entry : 0);
      }
      if (c < cost[i]) {
        cost[i] = c;
        before[i] = at;
      }
    }
  }
  if (cost[1] > 1e299) return std::nullopt;
  Route route;
  for (int at = 1; at >= 0; at = before[at]) route.line.push_back(nodes[at]);
  std::reverse(route.line.begin(), route.line.end());
  route.length = length(route.line);
  route.cost = cost[1];
  return route;
}

}  // namespace underlawn
