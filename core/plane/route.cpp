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
#include <deque>
#include <limits>
#include <queue>

#include "plane/sight.h"

namespace underlawn {
namespace {

constexpr int kNone = -1, kFrom = 0, kTo = 1;  // the first nodes are the start and the ends to choose from

struct Way {
  int node, previous;
  double cost;
  std::vector<char> inside;  // by dear ground
};

struct Leg {
  double least;  // of a whole route over this leg
  double cost;   // of the way to the leg's end
  int way, node;
  int looked;  // the way over it, seen along and priced; kNone before

  // The heap gives the least first; of equals the one found first, so that the answer is always the same.
  bool operator<(const Leg& o) const {
    if (least != o.least) return least > o.least;
    return way != o.way ? way > o.way : node > o.node;
  }
};

double straight(Point a, Point b) {
  return std::sqrt(dot(b - a, b - a));
}

}  // namespace

struct ReadyDear::One {
  Sight sight;
  double per_metre, per_entry;

  // What a leg costs more, which stands inside at its beginning or not; and then at its end.
  double price(Point a, Point b, bool& inside) const {
    const auto p = sight.passage(a, b, inside);
    inside = p.ends_inside;
    return per_metre * p.inside + per_entry * p.entries;
  }
};

ReadyDear::ReadyDear(const std::vector<DearGround>& grounds) {
  for (const DearGround& d : grounds) add(d);
}

void ReadyDear::add(const DearGround& d) {
  if (d.region.empty() || !(d.per_metre > 0 || d.per_entry > 0)) return;
  all_.push_back(std::make_shared<const One>(
      One{Sight(d.region), std::max(0.0, d.per_metre), std::max(0.0, d.per_entry)}));
}

void ReadyDear::add(const DearLine& line) {
  if (line.price > 0) lines_.push_back(line);
}

double ReadyDear::flat_crossings(Point a, Point b) const {
  double sum = 0;
  const Point u = b - a;
  for (const DearLine& line : lines_) {
    const Point v = line.at.b - line.at.a;
    const bool apart = cross(u, line.at.a - a) * cross(u, line.at.b - a) >= 0 ||
                       cross(v, a - line.at.a) * cross(v, b - line.at.a) >= 0;
    if (!apart && std::atan2(std::abs(cross(u, v)), std::abs(dot(u, v))) < line.flat) sum += line.price;
  }
  return sum;
}

double ReadyDear::cost(const Polyline& line, double per_bend) const {
  if (line.size() < 2) return 0;
  double cost = length(line) + per_bend * static_cast<double>(line.size() - 2);
  for (std::size_t i = 1; i < line.size(); ++i) cost += flat_crossings(line[i - 1], line[i]);
  for (const auto& d : all_) {
    bool inside = d->sight.strictly_holds(line.front());
    for (std::size_t i = 1; i < line.size(); ++i) cost += d->price(line[i - 1], line[i], inside);
  }
  return cost;
}

// The prepared ground with the corners at which a route may bend.
struct Router::Ground {
  struct Corner {
    Point at;
    // A corner of the free ground with its neighbours; where neither bends nor ground cost, a shortest way
    // only bends round it.
    bool free = false;
    Point before{}, after{};

    // Whether a line through the corner along `u` leaves both its neighbours on one side.
    bool rounds(Point u) const {
      const double l = cross(u, before - at), r = cross(u, after - at);
      return !free || (l >= -kSamePlace && r >= -kSamePlace) || (l <= kSamePlace && r <= kSamePlace);
    }
  };

  using Dear = ReadyDear::One;

  Ground(const Region& region, const ReadyDear& what_is_dear, double bend)
      : per_bend(std::max(0.0, bend)), free(region), prices(what_is_dear), dear(prices.all_) {
    for (const Sight::Corner& c : free.reflex_corners()) corners.push_back({c.at, true, c.before, c.after});
    for (const auto& d : dear)
      for (const Sight::Corner& c : d->sight.convex_corners())
        if (free.holds(c.at)) corners.push_back({c.at});
    taut = per_bend == 0 && dear.empty() && prices.lines_.empty();
    if (corners.size() <= kMostRemembered) seen.assign(corners.size() * corners.size(), kUnknown);
  }

  // Corners by number; what they see of one another is looked at once.
  bool sees(std::size_t a, std::size_t b) {
    if (seen.empty()) return free.sees(corners[a].at, corners[b].at);
    if (a > b) std::swap(a, b);  // and so the same both ways
    char& known = seen[a * corners.size() + b];
    if (known == kUnknown) known = free.sees(corners[a].at, corners[b].at);
    return known == 1;
  }

  // A leg between corners by a way that stood inside of `inside`: what its dear ground costs, and inside of
  // what it ends.
  struct Priced {
    std::vector<char> inside;
    double price;
    std::vector<char> ends_inside;
  };

  Priced price(Point a, Point b, const std::vector<char>& inside) const {
    Priced leg{inside, 0, std::vector<char>(dear.size())};
    for (std::size_t d = 0; d < dear.size(); ++d) {
      bool in = inside[d];
      leg.price += dear[d]->price(a, b, in);
      leg.ends_inside[d] = in;
    }
    leg.price += prices.flat_crossings(a, b);
    return leg;
  }

  // Corners by number; the way first asked for over a leg is remembered.
  const Priced& price(std::size_t a, std::size_t b, const std::vector<char>& inside) {
    if (first_priced.empty()) first_priced.assign(corners.size() * corners.size(), kNone);
    int& first = first_priced[a * corners.size() + b];
    if (first != kNone && priced[static_cast<std::size_t>(first)].inside == inside)
      return priced[static_cast<std::size_t>(first)];
    if (first == kNone) first = static_cast<int>(priced.size());
    priced.push_back(price(corners[a].at, corners[b].at, inside));
    return priced.back();
  }
  bool remembers() const { return !seen.empty(); }

  static constexpr std::size_t kMostRemembered = 2000;
  static constexpr char kUnknown = 2;
  double per_bend;
  Sight free;
  ReadyDear prices;
  const std::vector<std::shared_ptr<const Dear>>& dear;
  std::vector<Corner> corners;
  std::vector<char> seen;
  std::vector<int> first_priced;  // into priced
  std::deque<Priced> priced;
  bool taut = false;

  class Search;
};

class Router::Ground::Search {
 public:
  // To whichever end is cheapest reached.
  Search(Ground& ground, Point from, const std::vector<Point>& to) : g_(ground), from_(from) {
    std::vector<Point> ends;
    for (Point p : to)
      if (const Point end = g_.free.nearest(p); reached(end, p)) {
        ends.push_back(end);
        to_.push_back(p);
      }
    const auto on = [&ends](Point p) {
      double least = std::numeric_limits<double>::infinity();
      for (Point end : ends) least = std::min(least, straight(p, end));
      return least;
    };
    nodes_.reserve(g_.corners.size() + ends.size() + 1);
    const Point start = g_.free.nearest(from);
    nodes_.push_back({start, on(start), {}});
    for (Point end : ends) nodes_.push_back({end, 0, {}});
    first_corner_ = static_cast<int>(nodes_.size());
    for (const Corner& c : g_.corners) nodes_.push_back({c.at, on(c.at), {}});
  }

  std::optional<Route> run(double at_most) {
    least_found_ = at_most;
    if (!reached(nodes_[kFrom].at, from_) || to_.empty()) return std::nullopt;
    Way start{kFrom, kNone, 0, {}};
    for (const auto& d : g_.dear) start.inside.push_back(d->sight.strictly_holds(nodes_[kFrom].at));
    settle(std::move(start));
    while (!heap_.empty()) {
      const Leg leg = heap_.top();
      heap_.pop();
      if (leg.least > at_most) return std::nullopt;
      if (beaten(leg.node, leg.cost)) continue;
      const int looked = leg.looked == kNone ? look(leg) : leg.looked;
      if (looked == kNone || beaten(looked_[looked])) continue;
      if (is_end(leg.node)) return route_of(looked_[looked]);
      settle(std::move(looked_[looked]));
    }
    return std::nullopt;
  }

 private:
  struct Node {
    Point at;
    double on;                 // m straight to the end
    std::vector<int> settled;  // ways that ended here
  };

  // What a way standing outside ground that the other stands inside of may yet have to pay.
  double handicap(const std::vector<char>& inside, const std::vector<char>* other) const {
    double sum = 0;
    for (std::size_t d = 0; d < inside.size(); ++d)
      if (!inside[d] && (other == nullptr || (*other)[d])) sum += g_.dear[d]->per_entry;
    return sum;
  }
  // Whether a way settled in the node is no dearer, whatever is still to come. `inside` is the other's, where
  // known.
  bool beaten(int node, double cost, const std::vector<char>* inside = nullptr) const {
    for (int w : nodes_[node].settled)
      if (ways_[w].cost <= cost && ways_[w].cost + handicap(ways_[w].inside, inside) <= cost) return true;
    return false;
  }
  bool beaten(const Way& way) const { return beaten(way.node, way.cost, &way.inside); }

  static bool reached(Point snapped, Point asked) { return straight(snapped, asked) <= kRouteSnap; }
  bool is_end(int node) const { return node >= kTo && node < first_corner_; }
  bool is_corner(int node) const { return node >= first_corner_; }
  std::size_t corner(int node) const { return static_cast<std::size_t>(node - first_corner_); }

  bool rounds(int node, Point u) const { return !is_corner(node) || g_.corners[corner(node)].rounds(u); }

  void settle(Way way) {
    const int here = way.node, id = static_cast<int>(ways_.size());
    const double base = way.cost + (here == kFrom ? 0 : g_.per_bend);
    const Point at = nodes_[here].at;
    nodes_[here].settled.push_back(id);
    ways_.push_back(std::move(way));
    for (int i = kTo; i < static_cast<int>(nodes_.size()); ++i) {
      const double length = straight(at, nodes_[i].at), cost = base + length;
      if (i == here || cost + nodes_[i].on > least_found_ || beaten(i, cost)) continue;
      if (g_.taut && length > kSamePlace) {
        const Point u = (1 / length) * (nodes_[i].at - at);
        if (!rounds(here, u) || !rounds(i, u)) continue;
      }
      heap_.push({cost + nodes_[i].on, cost, id, i, kNone});
    }
  }

  bool sees(int a, int b) {
    if (is_corner(a) && is_corner(b)) return g_.sees(corner(a), corner(b));
    return g_.free.sees(nodes_[a].at, nodes_[b].at);
  }

  // Looks along a leg. The way over it, where that costs no more than was thought; else kNone, and if there
  // is a way it goes back on the heap with its price.
  int look(const Leg& leg) {
    const int here = ways_[leg.way].node;
    if (!sees(here, leg.node)) return kNone;
    const std::vector<char>& inside = ways_[leg.way].inside;
    const bool known = is_corner(here) && is_corner(leg.node) && g_.remembers();
    std::optional<Ground::Priced> once;
    const Ground::Priced& priced = known
                                       ? g_.price(corner(here), corner(leg.node), inside)
                                       : once.emplace(g_.price(nodes_[here].at, nodes_[leg.node].at, inside));
    Way on{leg.node, leg.way, leg.cost + priced.price, priced.ends_inside};
    if (is_end(leg.node)) least_found_ = std::min(least_found_, on.cost);
    const double price = on.cost - leg.cost;
    const int id = static_cast<int>(looked_.size());
    looked_.push_back(std::move(on));
    if (price == 0) return id;
    heap_.push({leg.least + price, leg.cost + price, leg.way, leg.node, id});
    return kNone;
  }

  Route route_of(const Way& last) const {
    Route route;
    route.line.push_back(nodes_[last.node].at);
    for (int w = last.previous; w != kNone; w = ways_[w].previous)
      route.line.push_back(nodes_[ways_[w].node].at);
    std::reverse(route.line.begin(), route.line.end());
    const double snapped = length(route.line);
    route.line.front() = from_;
    route.line.back() = to_[static_cast<std::size_t>(last.node - kTo)];
    route.length = length(route.line);
    route.cost = last.cost + (route.length - snapped);
    return route;
  }

  Ground& g_;
  Point from_;
  std::vector<Point> to_;  // that can be reached
  int first_corner_ = 0;
  std::vector<Node> nodes_;
  std::vector<Way> ways_, looked_;
  std::priority_queue<Leg> heap_;
  double least_found_ = std::numeric_limits<double>::infinity();
};

Router::Router(const Region& free, const std::vector<DearGround>& dear, double per_bend)
    : Router(free, ReadyDear(dear), per_bend) {}

Router::Router(const Region& free, const ReadyDear& dear, double per_bend)
    : ground_(std::make_unique<Ground>(free, dear, per_bend)) {}

Router::~Router() = default;
Router::Router(Router&&) noexcept = default;

const Sight& Router::free() const {
  return ground_->free;
}

double Router::cost(const Polyline& line) const {
  return ground_->prices.cost(line, ground_->per_bend);
}

std::optional<Route> Router::route(Point from, Point to, double at_most) {
  return Ground::Search(*ground_, from, {to}).run(at_most);
}

std::optional<Route> Router::route_to_any(Point from, const std::vector<Point>& to) {
  return Ground::Search(*ground_, from, to).run(std::numeric_limits<double>::infinity());
}

std::optional<Route> shortest_route(const RouteRequest& request) {
  return Router(request.free, request.dear, request.per_bend).route(request.from, request.to);
}

}  // namespace underlawn
