// SPDX-License-Identifier: GPL-3.0-or-later
// A* over the visibility graph, lazy in its legs: a leg goes on the heap with its straight length alone, is
// looked at only when it comes up, and goes back with the price of the ground it crosses. Most legs never
// come up.
//
// Where entering dear ground costs, a way that stands inside it and one that stands outside are not the same,
// though they meet in one corner. So a node can be settled more than once, each time by a way that none
// before it beats.
#include "plane/route.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

#include "plane/sight.h"

namespace underlawn {
namespace {

constexpr int kNone = -1, kFrom = 0, kTo = 1;  // the first two nodes are the ends

struct Node {
  Point at;
  // A corner of the free ground with its neighbours; where neither bends nor ground cost, a shortest way only
  // bends round it.
  bool corner = false;
  Point before, after;
  double on = 0;             // m straight to the end
  std::vector<int> settled;  // ways that ended here
};

struct Way {
  int node, previous;
  double cost;
  std::vector<char> inside;  // by dear ground
};

struct Leg {
  double least;  // of a whole route over this leg
  double cost;   // of the way to the leg's end
  int way, node;
  bool looked_at;  // it can be seen along, and the ground it crosses is in the cost

  // The heap gives the least first; of equals the one found first, so that the answer is always the same.
  bool operator<(const Leg& o) const {
    if (least != o.least) return least > o.least;
    return way != o.way ? way > o.way : node > o.node;
  }
};

class Search {
 public:
  explicit Search(const RouteRequest& request)
      : from_(request.from),
        to_(request.to),
        per_bend_(std::max(0.0, request.per_bend)),
        free_(request.free) {
    for (const DearGround& d : request.dear)
      if (!d.region.empty() && (d.per_metre > 0 || d.per_entry > 0))
        dear_.push_back({Sight(d.region), std::max(0.0, d.per_metre), std::max(0.0, d.per_entry)});
    add_node(free_.nearest(from_));
    add_node(free_.nearest(to_));
    for (const Sight::Corner& c : free_.reflex_corners())
      nodes_.push_back({c.at, true, c.before, c.after, distance(c.at, nodes_[kTo].at), {}});
    for (const Dear& d : dear_)
      for (const Sight::Corner& c : d.sight.convex_corners())
        if (free_.holds(c.at)) add_node(c.at);
    taut_ = per_bend_ == 0 && dear_.empty();
  }

  std::optional<Route> run() {
    const auto reached = [](Point snapped, Point asked) { return distance(snapped, asked) <= kRouteSnap; };
    if (!reached(nodes_[kFrom].at, from_) || !reached(nodes_[kTo].at, to_)) return std::nullopt;
    Way start{kFrom, kNone, 0, {}};
    for (const Dear& d : dear_) start.inside.push_back(d.sight.strictly_holds(nodes_[kFrom].at));
    settle(std::move(start));
    while (!heap_.empty()) {
      const Leg leg = heap_.top();
      heap_.pop();
      if (beaten(leg.node, leg.cost)) continue;
      if (!leg.looked_at && !look(leg)) continue;
      Way way = way_over(leg);
      if (beaten(way)) continue;
      if (leg.node == kTo) return route_of(way);
      settle(std::move(way));
    }
    return std::nullopt;
  }

 private:
  struct Dear {
    Sight sight;
    double per_metre, per_entry;
  };

  void add_node(Point p) {
    const double on = nodes_.size() > kTo ? distance(p, nodes_[kTo].at) : 0;
    nodes_.push_back({p, false, {}, {}, on, {}});
    if (nodes_.size() == kTo + 1) nodes_[kFrom].on = distance(nodes_[kFrom].at, p);
  }

  // What a way standing outside ground that the other stands inside of may yet have to pay.
  double handicap(const std::vector<char>& inside, const std::vector<char>* other) const {
    double sum = 0;
    for (std::size_t d = 0; d < dear_.size(); ++d)
      if (!inside[d] && (other == nullptr || (*other)[d])) sum += dear_[d].per_entry;
    return sum;
  }
  bool beaten(int node, double cost) const {
    return std::any_of(nodes_[node].settled.begin(), nodes_[node].settled.end(),
                       [&](int w) { return ways_[w].cost + handicap(ways_[w].inside, nullptr) <= cost; });
  }
  bool beaten(const Way& way) const {
    return std::any_of(nodes_[way.node].settled.begin(), nodes_[way.node].settled.end(), [&](int w) {
      return ways_[w].cost + handicap(ways_[w].inside, &way.inside) <= way.cost;
    });
  }

  // Whether a line through the corner along `u` leaves both its neighbours on one side.
  static bool rounds(const Node& n, Point u) {
    if (!n.corner) return true;
    const double l = cross(u, n.before - n.at), r = cross(u, n.after - n.at);
    return (l >= -kSamePlace && r >= -kSamePlace) || (l <= kSamePlace && r <= kSamePlace);
  }

  void settle(Way way) {
    const int here = way.node, id = static_cast<int>(ways_.size());
    const double base = way.cost + (here == kFrom ? 0 : per_bend_);
    nodes_[here].settled.push_back(id);
    ways_.push_back(std::move(way));
    for (int i = kTo; i < static_cast<int>(nodes_.size()); ++i) {
      const double straight = distance(nodes_[here].at, nodes_[i].at), cost = base + straight;
      if (i == here || cost + nodes_[i].on > least_found_ || beaten(i, cost)) continue;
      if (taut_ && straight > kSamePlace) {
        const Point u = (1 / straight) * (nodes_[i].at - nodes_[here].at);
        if (!rounds(nodes_[here], u) || !rounds(nodes_[i], u)) continue;
      }
      heap_.push({cost + nodes_[i].on, cost, id, i, false});
    }
  }

  // Looks along a leg. True where it is settled at once; a leg over dear ground goes back with its price.
  bool look(const Leg& leg) {
    const Way& way = ways_[leg.way];
    const Point a = nodes_[way.node].at, b = nodes_[leg.node].at;
    if (!free_.sees(a, b)) return false;
    double price = 0;
    for (std::size_t d = 0; d < dear_.size(); ++d) {
      const Sight::Passage p = dear_[d].sight.passage(a, b, way.inside[d]);
      price += dear_[d].per_metre * p.inside + dear_[d].per_entry * p.entries;
    }
    if (leg.node == kTo) least_found_ = std::min(least_found_, leg.cost + price);
    if (price == 0) return true;
    heap_.push({leg.least + price, leg.cost + price, leg.way, leg.node, true});
    return false;
  }

  Way way_over(const Leg& leg) const {
    const Way& way = ways_[leg.way];
    Way on{leg.node, leg.way, leg.cost, {}};
    for (std::size_t d = 0; d < dear_.size(); ++d) {
      const Point a = nodes_[way.node].at, b = nodes_[leg.node].at;
      on.inside.push_back(dear_[d].sight.passage(a, b, way.inside[d]).ends_inside);
    }
    return on;
  }

  Route route_of(const Way& last) const {
    Route route;
    route.line.push_back(nodes_[kTo].at);
    for (int w = last.previous; w != kNone; w = ways_[w].previous)
      route.line.push_back(nodes_[ways_[w].node].at);
    std::reverse(route.line.begin(), route.line.end());
    const double snapped = length(route.line);
    route.line.front() = from_;
    route.line.back() = to_;
    route.length = length(route.line);
    route.cost = last.cost + (route.length - snapped);
    return route;
  }

  Point from_, to_;
  double per_bend_;
  Sight free_;
  std::vector<Dear> dear_;
  std::vector<Node> nodes_;
  std::vector<Way> ways_;
  std::priority_queue<Leg> heap_;
  double least_found_ = std::numeric_limits<double>::infinity();
  bool taut_ = false;
};

}  // namespace

std::optional<Route> shortest_route(const RouteRequest& request) {
  return Search(request).run();
}

}  // namespace underlawn
