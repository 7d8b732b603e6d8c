// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/route.h"

#include <algorithm>
#include <cmath>
#include <queue>

#include "plane/sight.h"

namespace underlawn {
namespace {

struct Node {
  Point at;
  bool corner = false;  // of the free ground: a shortest line only bends round it
  Point before, after;  // a corner's neighbours
  double cost = 1e300;  // of the best way found
  int from = -1;
  bool done = false;
  std::vector<char> inside;  // by dear ground: whether the way arrives inside it
};

class Search {
 public:
  explicit Search(const RouteRequest& request) : q_(request), free_(request.free) {
    for (const DearGround& d : q_.dear) dear_.emplace_back(d.region);
    add_node(q_.from);
    add_node(q_.to);
    for (const auto& c : free_.bending_corners())
      nodes_.push_back({c.at, true, c.before, c.after, 1e300, -1, false, {}});
    for (const Sight& s : dear_) add_corners_of(s);
  }

  std::optional<Route> run() {
    if (!free_.holds(q_.from) || !free_.holds(q_.to)) return std::nullopt;
    Node& start = nodes_[0];
    start.cost = 0;
    for (const Sight& s : dear_) start.inside.push_back(s.holds(q_.from));
    open_.push({distance(q_.from, q_.to), 0});
    while (!open_.empty()) {
      const int at = open_.top().node;
      open_.pop();
      if (nodes_[at].done) continue;
      nodes_[at].done = true;
      if (at == 1) return found();
      expand(at);
    }
    return std::nullopt;
  }

 private:
  struct Open {
    double least;  // cost so far and the straight line on
    int node;
    bool operator<(const Open& o) const { return least != o.least ? least > o.least : node > o.node; }
  };

  void add_node(Point p) { nodes_.push_back({p, false, {}, {}, 1e300, -1, false, {}}); }

  // A way round dear ground bends at its corners. The many small turns of a rounded end are left out.
  void add_corners_of(const Sight& dear) {
    constexpr double kSharp = 0.35;  // sine of the turn
    for (const auto& c : dear.corners()) {
      const Point in = c.at - c.before, on = c.after - c.at;
      if (cross(in, on) > kSharp * norm(in) * norm(on) && free_.holds(c.at)) add_node(c.at);
    }
  }

  // Whether a line through the corner along `u` keeps both of its sides' ends on one side: else it could be
  // cut short.
  static bool touches(const Node& n, Point u) {
    if (!n.corner) return true;
    const double l = cross(u, n.before - n.at), r = cross(u, n.after - n.at);
    const double slack = kGraze;
    return (l >= -slack && r >= -slack) || (l <= slack && r <= slack);
  }

  void expand(int at) {
    const double base = nodes_[at].cost + (at != 0 ? q_.per_bend : 0);
    for (std::size_t i = 1; i < nodes_.size(); ++i) {
      const Node& n = nodes_[i];
      if (n.done) continue;
      const double straight = distance(nodes_[at].at, n.at), least = base + straight;
      if (least >= n.cost || straight <= kGraze) continue;
      const double on = distance(n.at, q_.to);
      if (least + on >= nodes_[1].cost) continue;
      const Point u = (1 / straight) * (n.at - nodes_[at].at);
      if (!touches(n, u) || !touches(nodes_[at], u)) continue;
      if (!free_.sees(nodes_[at].at, n.at)) continue;
      take(at, static_cast<int>(i), least, on);
    }
  }

  void take(int at, int to, double cost, double on) {
    std::vector<char> inside(dear_.size());
    for (std::size_t d = 0; d < dear_.size(); ++d) {
      const auto p = dear_[d].passage(nodes_[at].at, nodes_[to].at, nodes_[at].inside[d]);
      cost += q_.dear[d].per_metre * p.inside + q_.dear[d].per_entry * p.entries;
      inside[d] = p.ends_inside;
      if (cost >= nodes_[to].cost) return;
    }
    nodes_[to].cost = cost;
    nodes_[to].from = at;
    nodes_[to].inside = std::move(inside);
    open_.push({cost + on, to});
  }

  Route found() const {
    Route route;
    for (int i = 1; i >= 0; i = nodes_[i].from) route.line.push_back(nodes_[i].at);
    std::reverse(route.line.begin(), route.line.end());
    route.length = length(route.line);
    route.cost = nodes_[1].cost;
    return route;
  }

  const RouteRequest& q_;
  Sight free_;
  std::vector<Sight> dear_;
  std::vector<Node> nodes_;
  std::priority_queue<Open> open_;
};

}  // namespace

std::optional<Route> shortest_route(const RouteRequest& request) {
  return Search(request).run();
}

}  // namespace underlawn
