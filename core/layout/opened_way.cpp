// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/opened_way.h"

#include <array>

#include "layout/free_lengths.h"
#include "layout/in_steps.h"
#include "layout/legality.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kMetrePrice = 20;  // m of plain digging that a metre of trench is held to be worth
// m from a trench's end: a way that passes deeper than one and not than the next takes the next off it.
constexpr std::array kDepths = {0.0, 0.5, 1.0, 2.0, 3.5, 5.5, 8.0};
constexpr std::size_t kMostTries = 12;
constexpr int kMostOfTrench = 4, kMostWays = 8;
constexpr double kSpared = 0.02;  // m more than needed: a way has to be found there again
constexpr double kExact = 1e-3;   // m

// A coil by so many metres within both its ends, as far as conduits keep off it.
Region within_ends(const Conduits& c, const Segment& t, double by) {
  const Polyline inner = trimmed({t.a, t.b}, by + c.width / 2, by - c.width / 2);
  return region_of(strip_along(inner, 2 * c.keep));
}

// How much of it can go from either end, the least length left; beyond that all of it goes.
double may_lose(const Segment& t, double least) {
  const double length = distance(t.a, t.b);
  return std::max(0.0, std::min(length - least, length / 2 - 0.1));
}

// Passing through a trench at what it loses by that.
ReadyDear priced_trenches(const Conduits& c, const std::vector<Segment>& trenches, double least) {
  ReadyDear dear = c.dear;
  for (std::size_t k = 0; k + 1 < kDepths.size(); ++k) {
    std::vector<Region> parts;
    for (const Segment& t : trenches)
      if (kDepths[k] < may_lose(t, least)) parts.push_back(within_ends(c, t, kDepths[k]));
    dear.add({unite(parts), 0, kMetrePrice * (kDepths[k + 1] - kDepths[k])});
  }
  std::vector<Region> cores;
  double longest = 0;
  for (const Segment& t : trenches) {
    cores.push_back(within_ends(c, t, may_lose(t, least)));
    longest = std::max(longest, distance(t.a, t.b));
  }
  dear.add({unite(cores), 0, kMetrePrice * longest});
  return dear;
}

// The least that has to go from the one end or the other of a trench so that a line keeps off it.
std::optional<Segment> cut_back(const Polyline& line, const Segment& t, const Wishes& w) {
  const Point u = unit(t.b - t.a);
  const double most = distance(t.a, t.b) - w.least_length;
  const auto left = [&](bool head, double loss) {
    return head ? Segment{t.a + loss * u, t.b} : Segment{t.a, t.b - loss * u};
  };
  std::optional<Segment> best;
  for (bool head : {true, false}) {
    if (most <= kSpared || !conduit_keeps_off(line, left(head, most - kSpared), w)) continue;
    double fails = 0, holds = most - kSpared;
    while (holds - fails > kExact) {
      const double middle = (holds + fails) / 2;
      (conduit_keeps_off(line, left(head, middle), w) ? holds : fails) = middle;
    }
    const Segment cut = left(head, holds + kSpared);
    if (!best || distance(cut.a, cut.b) > distance(best->a, best->b)) best = cut;
  }
  return best;
}

class Opener {
 public:
  Opener(const Keeping& keeping, const Conduits& conduits, const Completer& completer, Arrangement a)
      : wishes_(keeping.wishes), conduits_(conduits), completer_(completer), a_(std::move(a)) {}

  std::optional<Whole> opened(double at_least) {
    for (int i = 0; i < kMostWays && metres_of(a_.trenches) >= at_least; ++i) {
      Whole w = completer_.complete(a_);
      const bool house = conduits_.stubs.empty() || !w.connection.run.line.empty();
      if (house && w.unjoined() == 0) return w;
      const auto way = cheapest_way(w.connection, !house);
      if (!way || !make_room(*way)) return std::nullopt;
    }
    return std::nullopt;
  }

 private:
  struct Way {
    Polyline line;
    std::size_t trench;  // that it leads to
    bool to_end;         // to its far end
  };
  struct Try {
    double apart;
    Point from;
    std::size_t trench;
    bool to_end;
  };

  std::vector<Try> tries(const Connection& c, bool to_house) const {
    std::vector<Point> from;
    if (to_house)
      for (const Polyline& stub : conduits_.stubs) from.push_back(stub.back());
    else
      from = places_on(c);
    std::vector<Try> all;
    for (std::size_t i = 0; i < a_.trenches.size(); ++i) {
      const Segment& t = a_.trenches[i];
      if (!to_house && reaches(c, t.a)) continue;
      for (Point p : from)
        for (bool to_end : {false, true})
          all.push_back({in_steps(distance(p, to_end ? t.b : t.a)), p, i, to_end});
    }
    std::stable_sort(all.begin(), all.end(), [](const Try& l, const Try& r) { return l.apart < r.apart; });
    std::vector<int> of_trench(a_.trenches.size(), 0);
    std::erase_if(all, [&](const Try& t) { return ++of_trench[t.trench] > kMostOfTrench; });
    if (all.size() > kMostTries) all.resize(kMostTries);
    return all;
  }

  std::vector<Point> places_on(const Connection& c) const {
    std::vector<Point> all;
    if (!c.run.line.empty()) all.push_back(c.run.line.back());
    for (const Polyline& leg : c.header.legs) all.insert(all.end(), leg.begin(), leg.end());
    if (all.empty() && !a_.trenches.empty()) all.push_back(a_.trenches.front().a);
    return all;
  }

  std::optional<Way> cheapest_way(const Connection& c, bool to_house) const {
    Router router(conduits_.free, priced_trenches(conduits_, a_.trenches, wishes_.least_length), kBend);
    std::optional<Way> best;
    double least = std::numeric_limits<double>::infinity();
    for (const Try& t : tries(c, to_house)) {
      const Segment& trench = a_.trenches[t.trench];
      const auto route = router.route(t.from, t.to_end ? trench.b : trench.a, least);
      if (!route || route->cost >= least || route->line.size() < 2) continue;
      least = route->cost;
      best = Way{route->line, t.trench, t.to_end};
    }
    return best;
  }

  // Whether anything had to be changed for it.
  bool make_room(const Way& way) {
    bool changed = way.to_end;
    if (way.to_end) std::swap(a_.trenches[way.trench].a, a_.trenches[way.trench].b);
    std::vector<Segment> kept;
    for (const Segment& t : a_.trenches) {
      const bool free = conduit_keeps_off(way.line, t, wishes_);
      changed = changed || !free;
      if (free)
        kept.push_back(t);
      else if (const auto cut = cut_back(way.line, t, wishes_))
        kept.push_back(*cut);
    }
    a_.trenches = std::move(kept);
    a_.in_line = false;
    return changed && !a_.trenches.empty();
  }

  const Wishes& wishes_;
  const Conduits& conduits_;
  const Completer& completer_;
  Arrangement a_;
};

}  // namespace

std::optional<Whole> with_ways_opened(const Keeping& keeping, const Conduits& conduits,
                                      const Completer& completer, Arrangement a, double at_least) {
  drop_illegal(keeping, a);
  if (a.trenches.empty() || conduits.stubs.empty()) return std::nullopt;
  return Opener(keeping, conduits, completer, std::move(a)).opened(at_least);
}

}  // namespace underlawn
