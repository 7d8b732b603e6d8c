// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/connect.h"

#include "layout/cheaper_bends.h"
#include "layout/fewer_bends.h"
#include "layout/in_steps.h"
#include "layout/kept_run.h"
#include "plane/strip.h"
#include "plane/subtract_all.h"

namespace underlawn {

Ring coil_keepout(const Polyline& t, const Conduits& c) {
  return strip_along(trimmed(t, c.width / 2, -c.width / 2), 2 * c.keep);
}

Ring coil_keepout(const Segment& t, const Conduits& c) {
  return coil_keepout(Polyline{t.a, t.b}, c);
}

Polyline line_of(const Arrangement& a, std::size_t trench) {
  Polyline line = {a.trenches[trench].a};
  if (trench < a.bends.size()) line.insert(line.end(), a.bends[trench].begin(), a.bends[trench].end());
  line.push_back(a.trenches[trench].b);
  return line;
}

namespace {

constexpr double kBesideCoil = 1;  // what a metre of conduit beside a coil costs more, in metres of digging

// Ground that a coil draws its heat from: conduits rather lie elsewhere.
Ring coil_neighbourhood(const Polyline& t, const Conduits& c) {
  return strip_along(trimmed(t, c.width, -c.width), std::max(c.spacing, 2.2 * c.keep));
}

constexpr std::size_t kMostTries = 12;
constexpr int kMostOfHead = 3;
constexpr double kFewerBends = 1;  // m of plain digging that corners a crew can stake may cost more
// Where the first way that leads anywhere is a detour, one to a place farther off may be cheaper. Beside
// coils a metre costs two.
constexpr std::size_t kMoreTries = 4;
constexpr double kDetour = 2;
constexpr double kOn = 1e-3;  // m: a point this near a line lies on it

struct Spine {
  Point low, high;
  std::vector<Segment> branches;  // from the line to heads beside it
};

bool contains(const Polygon& p, Point at) {
  if (!contains(p.outer, at)) return false;
  // On the edge of a hole is inside; contains() says so of the hole's ring too.
  return std::none_of(p.holes.begin(), p.holes.end(), [at](const Ring& hole) {
    if (!contains(hole, at)) return false;
    for (std::size_t i = 0; i < hole.size(); ++i)
      if (distance(Segment{hole[i], hole[(i + 1) % hole.size()]}, at) < kSamePlace) return false;
    return true;
  });
}

std::vector<Region> each(const Arrangement& a, const Conduits& c,
                         Ring (*around)(const Polyline&, const Conduits&)) {
  std::vector<Region> parts;
  for (std::size_t i = 0; i < a.trenches.size(); ++i) parts.push_back(region_of(around(line_of(a, i), c)));
  return parts;
}

ReadyDear with_neighbourhoods(const Conduits& c, const Arrangement& a) {
  ReadyDear dear = c.dear;
  dear.add({unite(each(a, c, coil_neighbourhood)), kBesideCoil, 0});
  return dear;
}

}  // namespace

class Joiner::Inside {
 public:
  Inside(const Conduits& c, const Arrangement& a)
      : conduits_(c),
        arrangement_(a),
        free_(subtract_all(c.free, each(a, c, coil_keepout))),
        router_(free_, with_neighbourhoods(c, a), kBend) {}

  Polyline with_run_shifted(const Polyline& run) {
    if (run.size() < 3) return run;
    shift_ = true;
    return run_over({run[0], run[1]}, Polyline(run.begin() + 1, run.end()));
  }

  double cost(const Polyline& line) const { return router_.cost(line); }

  Connection join(std::optional<double> joint, bool shift, double at_most) {
    joint_ = joint;
    shift_ = shift;
    at_most_ = at_most;
    return joined();
  }

  Connection join_by(const Polyline& kept) {
    kept_ = &kept;
    Connection by = joined();
    kept_ = nullptr;
    return by;
  }

 private:
  Connection joined() {
    made_ = {};
    std::optional<Spine> spine;
    if (arrangement_.in_line) spine = straight_spine();
    if (spine)
      follow(*spine);
    else
      grow();
    measure();
    return std::move(made_);
  }

  std::optional<Route> way(Point from, Point to, double at_most = std::numeric_limits<double>::infinity()) {
    const std::optional<std::size_t> here = piece_of(from), there = piece_of(to);
    if (here && there && *here != *there) return std::nullopt;
    auto route = router_.route(from, to, at_most);
    if (!route) return route;
    Polyline fewer = with_fewer_bends(route->line, router_.free());
    if (fewer == route->line) return route;
    // A corner beyond a curve may lie in dear ground.
    const double cost = router_.cost(fewer);
    if (cost > route->cost + kFewerBends) return route;
    route->line = std::move(fewer);
    route->length = length(route->line);
    route->cost = cost;
    return route;
  }

  // Of the free ground; none for a point that only rounding keeps out.
  std::optional<std::size_t> piece_of(Point p) const {
    for (std::size_t i = 0; i < free_.size(); ++i)
      if (contains(free_[i], p)) return i;
    return std::nullopt;
  }

  std::optional<Spine> straight_spine() const {
    const double angle = arrangement_.bearing.angle;
    struct Head {
      Point at;
      bool right;
    };
    std::vector<Head> heads;
    std::size_t rights = 0;
    for (const Segment& t : arrangement_.trenches) {
      const Point a = rotated(t.a, -angle), b = rotated(t.b, -angle);
      heads.push_back({a, b.x > a.x});
      rights += b.x > a.x;
    }
    const bool main_right = 2 * rights >= heads.size();
    double x = 0, low = 1e9, high = -1e9;
    for (const Head& h : heads) {
      if (h.right == main_right) x = h.at.x;
      low = std::min(low, h.at.y);
      high = std::max(high, h.at.y);
    }
    Spine s{rotated({x, low}, angle), rotated({x, high}, angle), {}};
    for (const Head& h : heads)
      if (std::abs(h.at.x - x) > kOn)
        s.branches.push_back({rotated({x, h.at.y}, angle), rotated(h.at, angle)});
    const auto open = [this](const Segment& leg) { return router_.free().sees(leg.a, leg.b); };
    if (distance(s.low, s.high) > kOn && !open({s.low, s.high})) return std::nullopt;
    if (!std::all_of(s.branches.begin(), s.branches.end(), open)) return std::nullopt;
    return s;
  }

  void follow(const Spine& s) {
    const Segment line{s.low, s.high};
    Point joint = s.low;
    std::vector<Point> targets = {nearest_on(line, start_of_run(line)), s.low, s.high};
    if (joint_) targets = {s.low + *joint_ * (s.high - s.low)};
    if (kept_) targets = {nearest_on(line, kept_->back())};
    if (auto run = run_to(targets)) {
      trim(*run, line);
      joint = run->back();
      made_.run.line = std::move(*run);
    }
    for (Point end : {s.low, s.high})
      if (distance(joint, end) > kOn) made_.header.legs.push_back({joint, end});
    for (const Segment& b : s.branches) made_.header.legs.push_back({b.a, b.b});
    if (made_.header.legs.empty() && made_.run.line.empty() && !arrangement_.trenches.empty()) return;
    made_.joined = static_cast<int>(arrangement_.trenches.size());
  }

  Point start_of_run(const Segment& line) const {
    if (!conduits_.stubs.empty()) return conduits_.stubs.front().back();
    return 0.5 * (line.a + line.b);
  }

  // The cheapest run to any of the points, over the first stub that leads anywhere.
  std::optional<Polyline> run_to(const std::vector<Point>& targets) {
    if (kept_) return run_as_kept(*kept_, conduits_.stubs, targets);
    for (const Polyline& stub : conduits_.stubs) {
      std::optional<Polyline> best;
      double least = 0;
      std::vector<Point> tried;
      for (Point to : targets) {
        const bool known =
            std::any_of(tried.begin(), tried.end(), [to](Point q) { return distance(to, q) < kOn; });
        if (known) continue;
        tried.push_back(to);
        auto route = way(stub.back(), to, best ? least - kOn : at_most_);
        if (!route || (best && route->cost >= least - kOn)) continue;
        least = route->cost;
        best = std::move(route->line);
      }
      if (best) return run_over(stub, *best);
    }
    return std::nullopt;
  }

  Polyline run_over(const Polyline& stub, const Polyline& way) const {
    const Polyline on = shift_ ? with_cheaper_bends(way, router_) : way;
    Polyline run = stub;
    for (auto p = on.begin() + 1; p != on.end(); ++p) {
      // A run that is held to its end is there already.
      if (run.size() > 1 && distance(run.back(), *p) < kSamePlace) run.pop_back();
      run.push_back(*p);
    }
    return run;
  }

  // Ends the run where it first meets the header.
  static void trim(Polyline& run, const Segment& header) {
    for (std::size_t i = 1; i < run.size(); ++i) {
      if (distance(header, run[i]) > kOn) continue;
      run.resize(i + 1);
      run.back() = nearest_on(header, run.back());
      return;
    }
  }

  // Header legs one by one, each head from the nearest place already reached.
  void grow() {
    std::vector<Point> heads;
    for (const Segment& t : arrangement_.trenches) heads.push_back(t.a);
    if (heads.empty()) return;
    std::vector<Point> near = heads;
    const Point from = conduits_.stubs.empty() ? heads.front() : conduits_.stubs.front().back();
    std::stable_sort(near.begin(), near.end(), [from](Point a, Point b) {
      return in_steps(distance(from, a)) < in_steps(distance(from, b));
    });
    if (near.size() > 3 && !kept_) near.resize(3);
    Point root = heads.front();
    if (auto run = run_to(near)) {
      root = run->back();
      made_.run.line = std::move(*run);
    }
    std::vector<Point> reached = {root};
    std::erase_if(heads, [root](Point h) { return distance(h, root) < kOn; });
    made_.joined = 1;
    while (!heads.empty() && add_leg(heads, reached)) {
    }
  }

  bool add_leg(std::vector<Point>& heads, std::vector<Point>& reached) {
    struct Try {
      double apart;
      std::size_t head;
      Point from;
    };
    std::vector<Try> tries;
    for (std::size_t i = 0; i < heads.size(); ++i)
      for (Point p : reached) tries.push_back({in_steps(distance(heads[i], p)), i, p});
    std::stable_sort(tries.begin(), tries.end(),
                     [](const Try& l, const Try& r) { return l.apart < r.apart; });
    // Many of the nearest may lead to one head that is shut in: of those after them, a few for each head.
    std::vector<int> of_head(heads.size(), 0);
    std::optional<Route> best;
    std::size_t last = tries.size();
    for (std::size_t i = 0; i < last && !(best && kDetour * tries[i].apart >= best->cost); ++i) {
      const Try& t = tries[i];
      if (++of_head[t.head] > kMostOfHead && i >= kMostTries) continue;
      auto route = best ? way(t.from, heads[t.head], best->cost - kOn) : way(t.from, heads[t.head]);
      if (!route || route->line.size() < 2 || (best && route->cost >= best->cost - kOn)) continue;
      if (!best) last = std::min(tries.size(), i + 1 + kMoreTries);
      best = std::move(route);
    }
    if (best) take_leg(best->line, heads, reached);
    return best.has_value();
  }

  void take_leg(const Polyline& line, std::vector<Point>& heads, std::vector<Point>& reached) {
    for (Point p : line) reached.push_back(p);
    made_.joined += static_cast<int>(std::erase_if(heads, [&](Point h) {
      for (std::size_t i = 1; i < line.size(); ++i)
        if (distance(Segment{line[i - 1], line[i]}, h) < kOn) return true;
      return false;
    }));
    made_.header.legs.push_back(line);
  }

  void measure() {
    for (const Polyline& leg : made_.header.legs) made_.header.length += length(leg);
    made_.run.length = made_.run.line.size() > 1 ? length(made_.run.line) : 0;
    made_.cost = made_.run_cost = router_.cost(made_.run.line);
    for (const Polyline& leg : made_.header.legs) made_.cost += router_.cost(leg);
  }

  const Conduits& conduits_;
  const Arrangement& arrangement_;
  std::optional<double> joint_;
  const Polyline* kept_ = nullptr;  // the run last shown, where it is to be the run
  bool shift_ = false;
  double at_most_ = std::numeric_limits<double>::infinity();  // m of plain digging
  Region free_;
  Router router_;
  Connection made_;
};

Joiner::Joiner(const Conduits& c, const Arrangement& a) : inside_(std::make_unique<Inside>(c, a)) {}
Joiner::~Joiner() = default;

Connection Joiner::join(std::optional<double> joint, bool shift, double at_most) {
  return inside_->join(joint, shift, at_most);
}

Connection Joiner::join_by(const Polyline& kept) {
  return inside_->join_by(kept);
}

Polyline Joiner::with_run_shifted(const Polyline& run) {
  return inside_->with_run_shifted(run);
}

double Joiner::cost(const Polyline& line) const {
  return inside_->cost(line);
}

std::vector<Ring> out_of_reach(const Conduits& c) {
  std::vector<Ring> rings;
  for (const Polygon& p : c.free)
    // Where a stub ends within the outline, if only in a hole, the outline says nothing.
    if (std::none_of(c.stubs.begin(), c.stubs.end(),
                     [&](const Polyline& stub) { return contains(p.outer, stub.back()); }))
      rings.push_back(p.outer);
  return rings;
}

bool way_exists(const Conduits& c, const Arrangement& a) {
  const Region open = subtract_all(c.free, each(a, c, coil_keepout));
  return std::any_of(open.begin(), open.end(), [&](const Polygon& p) {
    const bool from_house = std::any_of(c.stubs.begin(), c.stubs.end(),
                                        [&](const Polyline& stub) { return contains(p, stub.back()); });
    return from_house && std::any_of(a.trenches.begin(), a.trenches.end(),
                                     [&](const Segment& t) { return contains(p, t.a); });
  });
}

}  // namespace underlawn
