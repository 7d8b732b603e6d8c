// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/remedies.h"

#include <algorithm>

#include "base/quantity.h"
#include "base/say.h"
#include "cost/bill.h"
#include "layout/held_troubles.h"
#include "layout/lifted.h"
#include "plan/plan_troubles.h"
#include "plan/solve.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr std::size_t kRestrictions = 6;  // the dearest, alone
constexpr double kStep = 0.05;            // m

std::string metres(const Plan& plan, double value) {
  return print_quantity(Quantity::length, value, plan.units, Fineness::normal);
}

int circuits_of(const Outcome& o) {
  return static_cast<int>(o.layout.trenches.size());
}

double cost_of(const Outcome& o) {
  return o.bill != nullptr ? o.bill->price : 0;
}

// One thing that may be let go, given up or lessened.
struct Change {
  MoreRoom::Kind kind = MoreRoom::Kind::let_go;
  std::string let_go = {};  // in words
  Wishes wishes = {};       // with it let go
  Restriction what = {};    // give_up, setback, clearance
  double now = 0;           // m, setback and clearance

  bool lessens() const { return kind == MoreRoom::Kind::setback || kind == MoreRoom::Kind::clearance; }
};

class Finder {
 public:
  Finder(const Plan& plan, const WaysProgress& progress, const std::stop_token& stop)
      : plan_(plan), progress_(progress), stop_(stop), own_(solver_.solve(plan, stop)) {}

  std::vector<MoreRoom> find() {
    if (circuits_of(own_) >= plan_.wishes.circuits) return {};
    const std::vector<Change> all = changes();
    for (std::size_t i = 0; i < all.size(); ++i) add_alone(all[i], 0.3 * share(i, all.size()));
    add_pairs(all);
    add_ways();
    std::stable_sort(found_.begin(), found_.end(), better);
    if (found_.size() > kMostRemedies) found_.resize(kMostRemedies);
    return std::move(found_);
  }

 private:
  static double share(std::size_t i, std::size_t of) {
    return static_cast<double>(i) / static_cast<double>(std::max<std::size_t>(1, of));
  }

  void tell(double share, const std::string& what) const {
    if (progress_) progress_(share, what);
  }

  static bool better(const MoreRoom& l, const MoreRoom& r) {
    if (l.circuits != r.circuits) return l.circuits > r.circuits;
    if (l.holds != r.holds) return l.holds;
    return l.cost < r.cost;
  }

  // What is held, then what alone costs most, then the rest of what may be lessened, in the lot's order.
  std::vector<Change> changes() const {
    std::vector<Change> all;
    for (LetGo& one : each_let_go(plan_.site, plan_.wishes))
      all.push_back({MoreRoom::Kind::let_go, std::move(one.thing), std::move(one.wishes)});
    std::vector<Restriction> of;
    for (const RestrictionCost& c : own_.layout.costs) of.push_back(c.restriction);
    for (std::size_t i = 0; i < plan_.site.lot.size(); ++i)
      of.push_back({Restriction::Kind::setback, static_cast<int>(i), 0});
    for (const Feature& f : plan_.site.features) of.push_back({Restriction::Kind::feature, -1, f.id});
    std::vector<Restriction> known;
    for (const Restriction& r : of) {
      if (std::find(known.begin(), known.end(), r) != known.end()) continue;
      known.push_back(r);
      add_changes(r, all);
    }
    return all;
  }

  void add_changes(const Restriction& r, std::vector<Change>& all) const {
    const Site& site = plan_.site;
    if (r.kind == Restriction::Kind::setback) {
      const double now = site.lot[static_cast<std::size_t>(r.edge)].setback;
      if (now > 0) all.push_back({MoreRoom::Kind::setback, {}, {}, r, now});
      return;
    }
    const Feature* f = find_feature(site, r.feature_id);
    if (f == nullptr) return;
    if (f->kind == FeatureKind::no_dig) all.push_back({MoreRoom::Kind::give_up, {}, {}, r});
    const double now = trench_clearance(site, *f);
    if (now > (f->kind == FeatureKind::tree ? root_zone_radius(site, *f) : 0))
      all.push_back({MoreRoom::Kind::clearance, {}, {}, r, now});
  }

  // `stays`: m that stay of a setback or clearance.
  static Plan with(Plan plan, const Change& c, double stays) {
    if (c.kind == MoreRoom::Kind::let_go) plan.wishes = c.wishes;
    if (c.kind == MoreRoom::Kind::give_up)
      std::erase_if(plan.site.features, [&c](const Feature& f) { return f.id == c.what.feature_id; });
    if (c.kind == MoreRoom::Kind::setback)
      plan.site.lot[static_cast<std::size_t>(c.what.edge)].setback = stays;
    if (c.kind == MoreRoom::Kind::clearance)
      for (Feature& f : plan.site.features)
        if (f.id == c.what.feature_id) {
          f.run_clearance = std::min(stays, run_clearance(plan.site, f));
          f.trench_clearance = stays;
        }
    return plan;
  }

  std::string in_words(const Change& c, double stays) const {
    if (c.kind == MoreRoom::Kind::let_go) return say("Without {}", c.let_go);
    if (c.kind == MoreRoom::Kind::setback)
      return say("A setback of {} instead of {} at lot edge {}", metres(plan_, stays), metres(plan_, c.now),
                 std::to_string(c.what.edge + 1));
    const std::string name = display_name(*find_feature(plan_.site, c.what.feature_id));
    return c.kind == MoreRoom::Kind::give_up
               ? say("{} given up", name)
               : say("{} instead of {} kept free about {}", metres(plan_, stays), metres(plan_, c.now), name);
  }

  int circuits_with(const Plan& plan) const {
    return static_cast<int>(make_layout(plan.site, plan.wishes, own_.coil, stop_).trenches.size());
  }

  // The most that may stay of it, in whole steps, so that as many fit as with none of it.
  double least_lessened(const Plan& plan, const Change& c, int enough) const {
    int stays = 0, goes = static_cast<int>(std::ceil(c.now / kStep));
    while (goes - stays > 1 && !stop_.stop_requested()) {
      const int middle = (stays + goes) / 2;
      (circuits_with(with(plan, c, middle * kStep)) >= enough ? stays : goes) = middle;
    }
    return stays * kStep;
  }

  void add(MoreRoom::Kind kind, bool lessens, std::string sentence, Plan with) {
    const Outcome o = solver_.solve(with, stop_);
    if (stop_.stop_requested() || circuits_of(o) <= circuits_of(own_)) return;
    MoreRoom r{kind, lessens, std::move(sentence), std::move(with), circuits_of(o), cost_of(o), 0, false};
    r.dearer = r.cost - cost_of(own_);
    r.holds = water_holds(o, plan_.thermal);
    found_.push_back(std::move(r));
  }

  // Of setbacks and clearances, which are many, those that the layout names as dear.
  bool worth_alone(const Change& c) const {
    const auto& costs = own_.layout.costs;
    const auto end = costs.begin() + static_cast<std::ptrdiff_t>(std::min(kRestrictions, costs.size()));
    return !c.lessens() || std::any_of(costs.begin(), end,
                                       [&c](const RestrictionCost& k) { return k.restriction == c.what; });
  }

  void add_alone(const Change& c, double done) {
    if (stop_.stop_requested() || !worth_alone(c)) return;
    tell(done, c.kind == MoreRoom::Kind::let_go ? c.let_go : name_of(plan_.site, c.what));
    const int enough = circuits_with(with(plan_, c, 0));
    if (enough <= circuits_of(own_)) return;
    const double stays = c.lessens() ? least_lessened(plan_, c, enough) : 0;
    add(c.kind, c.lessens(), in_words(c, stays), with(plan_, c, stays));
  }

  struct Pair {
    std::size_t a, b;
    int circuits;
  };

  void add_pairs(const std::vector<Change>& all) {
    int best = circuits_of(own_);
    for (const MoreRoom& r : found_) best = std::max(best, r.circuits);
    if (best >= plan_.wishes.circuits || stop_.stop_requested()) return;
    std::vector<Pair> pairs = pairs_beyond(best, all);
    std::stable_sort(pairs.begin(), pairs.end(),
                     [](const Pair& l, const Pair& r) { return l.circuits > r.circuits; });
    if (pairs.size() > kMostPairs) pairs.resize(kMostPairs);
    for (const Pair& p : pairs) add_pair(all[p.a], all[p.b], p.circuits);
  }

  std::vector<Pair> pairs_beyond(int best, const std::vector<Change>& all) const {
    std::vector<Pair> pairs;
    int tried = 0;
    // The dearest with each other first.
    for (std::size_t sum = 1; sum + 2 < 2 * all.size(); ++sum)
      for (std::size_t a = 0; 2 * a < sum && tried < kMostPairsTried && !stop_.stop_requested(); ++a) {
        const std::size_t b = sum - a;
        if (b >= all.size() || !go_together(all[a], all[b])) continue;
        tell(0.3 + 0.2 * share(static_cast<std::size_t>(tried), kMostPairsTried), say("Two at once"));
        const int circuits = circuits_with(with(with(plan_, all[a], 0), all[b], 0));
        ++tried;
        if (circuits > best) pairs.push_back({a, b, circuits});
      }
    return pairs;
  }

  // What is let go comes first, as its wishes are all of them; an area is given up or its clearance lessened.
  static bool go_together(const Change& a, const Change& b) {
    if (b.kind == MoreRoom::Kind::let_go) return false;
    return a.kind == MoreRoom::Kind::let_go || !(a.what == b.what);
  }

  void add_pair(const Change& a, const Change& b, int enough) {
    if (stop_.stop_requested()) return;
    const double first = a.lessens() ? least_lessened(with(plan_, b, 0), a, enough) : 0;
    const Plan one = with(plan_, a, first);
    const double second = b.lessens() ? least_lessened(one, b, enough) : 0;
    add(MoreRoom::Kind::pair, a.lessens() || b.lessens(),
        say("Both: {}; {}", in_words(a, first), in_words(b, second)), with(one, b, second));
  }

  void add_ways() {
    const auto said = [this](double share, const std::string& what) { tell(0.5 + 0.5 * share, what); };
    for (Way& way : ways_of(plan_, said, stop_)) {
      if (way.circuits <= circuits_of(own_)) continue;
      MoreRoom r{
          MoreRoom::Kind::way, false, std::move(way.sentence), plan_, way.circuits, way.cost, 0, way.holds};
      r.plan.wishes = std::move(way.wishes);
      r.dearer = r.cost - cost_of(own_);
      found_.push_back(std::move(r));
    }
  }

  const Plan& plan_;
  const WaysProgress& progress_;
  std::stop_token stop_;
  Solver solver_;
  Outcome own_;
  std::vector<MoreRoom> found_;
};

}  // namespace

std::vector<MoreRoom> remedies_of(const Plan& plan, const WaysProgress& progress, std::stop_token stop) {
  if (plan.site.lot.empty() || !site_troubles(plan).empty() || !wishes_troubles(plan).empty()) return {};
  return Finder(plan, progress, stop).find();
}

}  // namespace underlawn
