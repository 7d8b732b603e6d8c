// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/layout.h"

#include <cmath>
#include <tuple>

#include "layout/blocked_way.h"
#include "layout/connect.h"
#include "layout/costs.h"
#include "layout/crossings.h"
#include "layout/given.h"
#include "layout/legality.h"
#include "layout/supply_coil.h"

namespace underlawn {

namespace {

constexpr std::size_t kSearchedFully = 8;  // bearings, after a look at all
constexpr std::size_t kRefined = 2;        // of them, with their neighbours
constexpr std::size_t kRouted = 6;         // arrangements with real header and run
constexpr double kHair = 0.004;            // m
constexpr int kMoreThanWanted = 3;
constexpr int kMostCircuits = 1000;

std::string metres(double value) {
  return std::to_string(value) + " m";
}

std::optional<Trouble> wishes_trouble(const Wishes& w, const Coil& coil) {
  struct Bound {
    const char* code;
    const char* thing;
    double value, least, most;
  };
  const Bound bounds_[] = {{"trench_length_out_of_range", "trench length", coil.trench_length, 0.1, 1000},
                           {"trench_width_out_of_range", "trench width", w.trench_width, 0.01, 100},
                           {"spacing_out_of_range", "spacing of trenches", w.spacing, 0.01, 1000},
                           {"end_gap_out_of_range", "gap at trench ends", w.end_gap, 0, 1000},
                           {"run_width_out_of_range", "width of header and run", w.run_width, 0.01, 100}};
  for (const Bound& b : bounds_)
    if (!(b.value >= b.least && b.value <= b.most))
      return Trouble{b.code, b.thing, metres(b.value), metres(b.least) + " to " + metres(b.most),
                     "Enter it again; nothing can be placed without it."};
  if (w.circuits < 0)
    return Trouble{"circuits_negative", "number of circuits", std::to_string(w.circuits), "0 or more",
                   "Enter how many circuits are wanted."};
  return std::nullopt;
}

bool on_line(const Polyline& line, Point p) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(Segment{line[i - 1], line[i]}, p) < kLegalSlack) return true;
  return false;
}

// An arrangement with everything that hangs on it.
struct Whole {
  std::vector<Segment> field;
  std::optional<Segment> in_run;
  Connection connection;
  double angle = 0;
  double cost = 0;
  int unjoined() const { return static_cast<int>(field.size()) - connection.joined; }
  int count() const { return static_cast<int>(field.size()) + (in_run ? 1 : 0); }
};

class Placer {
 public:
  Placer(const Site& site, const Wishes& wishes, const Coil& coil, std::stop_token stop)
      : site_(site), wishes_(wishes), coil_(coil), stop_(std::move(stop)) {
    out_.wanted = wishes.circuits;
  }

  Layout place() {
    if (!wishes_.given.empty()) return place_given();
    if (auto trouble = ground_trouble()) out_.troubles.push_back(*trouble);
    if (!out_.troubles.empty() || wishes_.circuits == 0) return std::move(out_);
    search();
    return std::move(out_);
  }

 private:
  std::optional<Trouble> ground_trouble() {
    auto buildable = buildable_region(site_);
    if (!buildable) return buildable.error();
    auto routable = routable_region(site_);
    if (!routable) return routable.error();
    out_.buildable = std::move(*buildable);
    out_.routable = std::move(*routable);
    return wishes_trouble(wishes_, coil_);
  }

  // Trenches as they are given, joined where there is a lot and a way.
  Layout place_given() {
    const auto given = given_trenches(wishes_, coil_);
    const std::optional<Trouble> trouble = ground_trouble();
    if (!given) out_.troubles.push_back(given.error());
    if (trouble && !site_.lot.empty()) out_.troubles.push_back(*trouble);
    if (!given || stop_.stop_requested()) return std::move(out_);
    Whole w;
    for (const Trench& t : *given) w.field.push_back({t.head, t.end});
    if (trouble)
      take(std::move(w));
    else
      join_given(std::move(w));
    out_.trenches = *given;
    out_.wanted = out_.fits = static_cast<int>(given->size());
    return std::move(out_);
  }

  void join_given(Whole w) {
    Arrangement a;
    a.trenches = w.field;
    a.bearing.angle = w.angle = std::atan2(w.field[0].b.y - w.field[0].a.y, w.field[0].b.x - w.field[0].a.x);
    const Conduits conduits = conduits_for(site_, wishes_, out_.routable);
    w.connection = connect(conduits, a, std::nullopt);
    drop_illegal_lines(w);
    take(std::move(w));
    explain(conduits);
  }

  void search() {
    const Ground ground = trench_ground(site_), for_header = conduit_ground(site_);
    const Approach approach(site_, wishes_.run_width);
    const int wanted = std::min(wishes_.circuits, kMostCircuits);
    const TrenchSize size{coil_.trench_length, wishes_.trench_width,
                          std::max(wishes_.spacing, wishes_.trench_width), wishes_.end_gap};
    const Search s{ground,
                   for_header,
                   approach,
                   size,
                   wishes_.run_width,
                   wanted,
                   false,
                   wishes_.coil_in_run && wanted > 1 && site_.entry,
                   wanted + kMoreThanWanted};
    const std::vector<Bearing> bearings = bearings_to_try(site_);
    std::vector<Arrangement> found = gather(s, bearings);
    if (stop_.stop_requested()) return;
    const Conduits conduits = conduits_for(site_, wishes_, out_.routable);
    take(best_of(found, conduits));
    out_.fits = std::max(out_.fits, static_cast<int>(out_.trenches.size()));
    explain(conduits);
    if (static_cast<int>(out_.trenches.size()) < wishes_.circuits)
      out_.costs = restriction_costs(s, bearings, out_.fits, stop_);
  }

  std::vector<Arrangement> gather(const Search& s, const std::vector<Bearing>& bearings) {
    struct Ranked {
      Bearing bearing;
      int fits;
      double estimate;
    };
    std::vector<Ranked> ranked;
    int best = 1;
    for (const Bearing& b : bearings) {
      if (stop_.stop_requested()) return {};
      const Searched l = look(s, b, best);
      best = std::max(best, std::min(l.fits, s.wanted));
      ranked.push_back({b, std::min(l.fits, s.wanted), l.found.empty() ? 1e9 : l.found.front().estimate});
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const Ranked& l, const Ranked& r) {
      return l.fits != r.fits ? l.fits > r.fits : l.estimate < r.estimate;
    });
    std::vector<Arrangement> found;
    for (std::size_t i = 0; i < std::min(kSearchedFully, ranked.size()); ++i) {
      std::vector<Bearing> tried = {ranked[i].bearing};
      if (i < kRefined && ranked[i].fits < s.wanted)
        for (const Bearing& b : bearings_round(ranked[i].bearing.angle)) tried.push_back(b);
      for (const Bearing& b : tried) search_one(s, b, found);
    }
    return found;
  }

  void search_one(const Search& s, const Bearing& b, std::vector<Arrangement>& found) {
    if (stop_.stop_requested()) return;
    Searched full = search_fully(s, b);
    out_.fits = std::max(out_.fits, full.fits);
    for (Arrangement& a : full.found) found.push_back(std::move(a));
  }

  // Heads packed against a boundary leave no way past them: the same trenches drawn back a little along
  // themselves, each as far as it may, are another arrangement, joined more cheaply.
  void add_drawn_back(std::vector<Arrangement>& found) const {
    const std::size_t packed = found.size();
    for (std::size_t i = 0; i < packed; ++i) {
      if (found[i].in_line) continue;
      for (double back : {wishes_.run_width, wishes_.run_width + wishes_.trench_width}) {
        Arrangement a = found[i];
        for (std::size_t t = 0; t < a.trenches.size(); ++t) draw_back(a.trenches, t, back);
        a.estimate -= 1e-3 * back;  // before the packed one, which it replaces where it is no worse
        found.push_back(std::move(a));
      }
    }
  }

  void draw_back(std::vector<Segment>& trenches, std::size_t which, double back) const {
    const Segment at = trenches[which];
    const Point u = unit(at.b - at.a);
    for (double share : {1.0, 0.75, 0.5, 0.25}) {
      const Segment moved{at.a + share * back * u, at.b + share * back * u};
      // With a hair to spare, as the search itself keeps: what is proved here is not proved again.
      const Segment spared{moved.a - kHair * u, moved.b + kHair * u};
      bool legal = trench_is_legal(site_, spared, wishes_.trench_width + 2 * kHair);
      for (std::size_t k = 0; legal && k < trenches.size(); ++k)
        legal = k == which || pair_is_legal(trenches[k], moved, wishes_);
      if (!legal) continue;
      trenches[which] = moved;
      return;
    }
  }

  Whole best_of(std::vector<Arrangement>& found, const Conduits& conduits) {
    drop_illegal(found);
    add_drawn_back(found);
    std::stable_sort(found.begin(), found.end(), [](const Arrangement& l, const Arrangement& r) {
      return l.trenches.size() != r.trenches.size() ? l.trenches.size() > r.trenches.size()
                                                    : l.estimate < r.estimate;
    });
    Whole best;
    std::size_t routed = 0, last_count = 0;
    for (const Arrangement& a : found) {
      if (stop_.stop_requested()) break;
      if (a.trenches.size() != last_count) routed = 0;
      last_count = a.trenches.size();
      if (routed++ >= kRouted || static_cast<int>(last_count) + 1 < best.count()) continue;
      Whole w = whole(a, conduits);
      if (w.count() > wishes_.circuits) continue;
      if (better(w, best)) best = std::move(w);
    }
    return best;
  }

  void drop_illegal(std::vector<Arrangement>& found) const {
    for (Arrangement& a : found) {
      std::vector<Segment> kept;
      for (const Segment& t : a.trenches) {
        const bool pairs = std::all_of(kept.begin(), kept.end(),
                                       [&](const Segment& k) { return pair_is_legal(k, t, wishes_); });
        if (pairs && trench_is_legal(site_, t, wishes_.trench_width)) kept.push_back(t);
      }
      a.trenches = std::move(kept);
    }
    std::erase_if(found, [](const Arrangement& a) { return a.trenches.empty(); });
  }

  // Joined trenches first, then their number, then the digging.
  static bool better(const Whole& l, const Whole& r) {
    const bool l_run = !l.connection.run.line.empty(), r_run = !r.connection.run.line.empty();
    if (l.count() != r.count()) return l.count() > r.count();
    if (l_run != r_run) return l_run;
    if (l.unjoined() != r.unjoined()) return l.unjoined() < r.unjoined();
    return l.cost < r.cost - 1e-6;
  }

  // Where the run does not happen to hold the coil that is missing, other joints on the header are tried.
  Whole whole(const Arrangement& a, const Conduits& conduits) const {
    Whole w = joined_at(a, conduits, std::nullopt);
    const bool one_missing = wishes_.coil_in_run && w.count() + 1 == wishes_.circuits;
    if (!one_missing || w.connection.run.line.empty() || !a.in_line) return w;
    for (double share : {0.0, 1.0 / 3, 2.0 / 3, 1.0}) {
      if (w.in_run || stop_.stop_requested()) break;
      Whole other = joined_at(a, conduits, share);
      if (other.in_run) w = std::move(other);
    }
    return w;
  }

  Whole joined_at(const Arrangement& a, const Conduits& conduits, std::optional<double> share) const {
    Whole w;
    w.field = a.trenches;
    w.angle = a.bearing.angle;
    w.connection = connect(conduits, a, share);
    drop_illegal_lines(w);
    if (wishes_.coil_in_run && w.connection.run.line.size() > 1 && w.count() < wishes_.circuits)
      w.in_run =
          coil_in_run(site_, wishes_, w.connection.run, w.connection.header, w.field, coil_.trench_length);
    const double weight =
        wishes_.trench_width * wishes_.trench_depth / std::max(1e-6, wishes_.run_width * wishes_.run_depth);
    w.cost = w.connection.cost + (a.bearing.drawn ? 0 : kOddBearing) +
             weight * coil_.trench_length * static_cast<double>(w.field.size());
    if (w.in_run) w.cost += std::max(0.0, weight - 1) * coil_.trench_length;
    return w;
  }

  // What cannot be proved by distances is not drawn.
  void drop_illegal_lines(Whole& w) const {
    const auto legal = [&](const Polyline& line, double free_start) {
      if (!conduit_is_legal(site_, wishes_, line, free_start)) return false;
      return std::all_of(w.field.begin(), w.field.end(),
                         [&](const Segment& t) { return conduit_keeps_off(line, t, wishes_); });
    };
    Connection& c = w.connection;
    const double stub = c.run.line.size() > 1 ? distance(c.run.line[0], c.run.line[1]) : 0;
    if (c.run.line.size() > 1 && !legal(c.run.line, stub)) c.run = {};
    std::vector<Polyline> kept;
    const Point root = !c.run.line.empty()     ? c.run.line.back()
                       : c.header.legs.empty() ? w.field.front().a
                                               : c.header.legs.front().front();
    const auto reached = [&](Point p) {
      return distance(root, p) < 2 * kLegalSlack ||
             std::any_of(kept.begin(), kept.end(), [p](const Polyline& leg) { return on_line(leg, p); });
    };
    // A leg that starts on one left out goes with it.
    for (Polyline& leg : c.header.legs)
      if (reached(leg.front()) && legal(leg, 0)) kept.push_back(std::move(leg));
    c.joined = static_cast<int>(
        std::count_if(w.field.begin(), w.field.end(), [&](const Segment& t) { return reached(t.a); }));
    c.header.legs = kept;
    c.header.length = 0;
    for (const Polyline& leg : c.header.legs) c.header.length += length(leg);
  }

  void take(Whole best) {
    if (best.count() == 0) return;
    out_.header = best.connection.header;
    out_.run = best.connection.run;
    out_.direction = std::atan2(best.field.empty() ? 0 : best.field[0].b.y - best.field[0].a.y,
                                best.field.empty() ? 1 : best.field[0].b.x - best.field[0].a.x);
    add_trenches(best);
    out_.crossings = crossings_of(site_, wishes_, out_.header, out_.run);
    unjoined_ = best.unjoined();
  }

  void add_trenches(const Whole& best) {
    const auto made = [&](const Segment& s, TrenchRole role) {
      Trench t;
      t.role = role;
      t.head = s.a;
      t.end = s.b;
      t.width = wishes_.trench_width;
      t.depth = wishes_.trench_depth;
      t.coil = coil_;
      return t;
    };
    for (const Segment& s : best.field) out_.trenches.push_back(made(s, TrenchRole::field));
    if (best.in_run) out_.trenches.push_back(made(*best.in_run, TrenchRole::supply));
    number_along_header();
  }

  // Across the field from one side to the other, as a crew works, beginning on the side nearer the house; the
  // coil in the run, whose trench is dug last, at the end.
  void number_along_header() {
    const Point u = direction(out_.direction), across = left_normal(u);
    const Point house = site_.entry ? site_.entry->at : out_.trenches.front().head;
    double low = 1e300, high = -1e300;
    for (const Trench& t : out_.trenches) {
      if (t.role == TrenchRole::supply) continue;
      low = std::min(low, dot(across, t.head));
      high = std::max(high, dot(across, t.head));
    }
    const double side = std::abs(dot(across, house) - low) <= std::abs(dot(across, house) - high) ? 1 : -1;
    const auto key = [&](const Trench& t) {
      // Rows side by side within a centimetre are one row.
      return std::tuple(t.role == TrenchRole::supply, std::round(100 * side * dot(across, t.head)),
                        dot(u, t.head));
    };
    std::stable_sort(out_.trenches.begin(), out_.trenches.end(),
                     [&](const Trench& l, const Trench& r) { return key(l) < key(r); });
    for (std::size_t i = 0; i < out_.trenches.size(); ++i) out_.trenches[i].number = static_cast<int>(i) + 1;
  }

  void explain(const Conduits& conduits) {
    if (!site_.entry) {
      out_.troubles.push_back({"no_entry_point", "entry point", "not set", "on a wall of the house",
                               "Set where the supply run enters the house."});
      return;
    }
    if (out_.trenches.empty()) {
      out_.troubles.push_back({"no_trench_fits", "trenches placed", "0", "at least 1",
                               "Shorten the trench, lessen a setback or clearance where the code allows, or "
                               "move what is in the way."});
      return;
    }
    if (out_.run.line.empty()) out_.troubles.push_back(no_way(site_, wishes_, conduits, out_.trenches));
    if (unjoined_ > 0 && !out_.run.line.empty())
      out_.troubles.push_back(
          {"heads_not_joined", "trench heads that no header reaches", std::to_string(unjoined_), "0",
           "Free a way to them: allow a crossing, lessen a clearance, or ask for fewer circuits."});
  }

  const Site& site_;
  const Wishes& wishes_;
  const Coil& coil_;
  std::stop_token stop_;
  Layout out_;
  int unjoined_ = 0;
};

}  // namespace

Layout make_layout(const Site& site, const Wishes& wishes, const Coil& coil, std::stop_token stop) {
  return Placer(site, wishes, coil, std::move(stop)).place();
}

}  // namespace underlawn
