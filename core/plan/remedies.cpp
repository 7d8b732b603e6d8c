// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/remedies.h"

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

constexpr std::size_t kRestrictions = 3;  // the dearest
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

class Finder {
 public:
  Finder(const Plan& plan, const WaysProgress& progress, const std::stop_token& stop)
      : plan_(plan), progress_(progress), stop_(stop), own_(solver_.solve(plan, stop)) {}

  std::vector<MoreRoom> find() {
    if (circuits_of(own_) >= plan_.wishes.circuits) return {};
    add_ways();
    tell(0.6, say("What is held"));
    for (const LetGo& one : each_let_go(plan_.site, plan_.wishes)) add_let_go(one);
    const auto& costs = own_.layout.costs;
    for (std::size_t i = 0; i < std::min(kRestrictions, costs.size()); ++i) {
      tell(0.7 + 0.1 * static_cast<double>(i), name_of(plan_.site, costs[i].restriction));
      add_lessened(costs[i].restriction);
    }
    std::stable_sort(found_.begin(), found_.end(), better);
    if (found_.size() > kMostRemedies) found_.resize(kMostRemedies);
    return std::move(found_);
  }

 private:
  void tell(double share, const std::string& what) const {
    if (progress_) progress_(share, what);
  }

  static bool better(const MoreRoom& l, const MoreRoom& r) {
    if (l.circuits != r.circuits) return l.circuits > r.circuits;
    if (l.holds != r.holds) return l.holds;
    return l.cost < r.cost;
  }

  void add(MoreRoom::Kind kind, std::string sentence, Plan with) {
    const Outcome o = solver_.solve(with, stop_);
    if (stop_.stop_requested() || circuits_of(o) <= circuits_of(own_)) return;
    MoreRoom r{kind, std::move(sentence), std::move(with), circuits_of(o), cost_of(o), 0, false};
    r.dearer = r.cost - cost_of(own_);
    r.holds = water_holds(o, plan_.thermal);
    found_.push_back(std::move(r));
  }

  void add_ways() {
    for (Way& way : ways_of(
             plan_, [this](double share, const std::string&what) { tell(0.6 * share, what); }, stop_)) {
      if (way.circuits <= circuits_of(own_)) continue;
      MoreRoom r{MoreRoom::Kind::way, std::move(way.sentence), plan_, way.circuits, way.cost, 0, way.holds};
      r.plan.wishes = std::move(way.wishes);
      r.dearer = r.cost - cost_of(own_);
      found_.push_back(std::move(r));
    }
  }

  void add_let_go(const LetGo& one) {
    if (stop_.stop_requested()) return;
    Plan with = plan_;
    with.wishes = one.wishes;
    add(MoreRoom::Kind::let_go, say("Without {}", one.thing), std::move(with));
  }

  int circuits_on(const Site& site) const {
    return static_cast<int>(make_layout(site, plan_.wishes, own_.coil, stop_).trenches.size());
  }

  void add_lessened(const Restriction& r) {
    const Feature* f =
        r.kind == Restriction::Kind::feature ? find_feature(plan_.site, r.feature_id) : nullptr;
    if (r.kind == Restriction::Kind::feature && f == nullptr) return;
    if (f != nullptr && f->kind == FeatureKind::no_dig) add_given_up(*f);
    const double now = f == nullptr ? plan_.site.lot[static_cast<std::size_t>(r.edge)].setback
                                    : trench_clearance(plan_.site, *f);
    const auto most = least_lessened(r, now);
    if (!most || stop_.stop_requested()) return;
    const auto kind = f == nullptr ? MoreRoom::Kind::setback : MoreRoom::Kind::clearance;
    add(kind, lessened_words(r, *most, now), lessened(r, *most));
  }

  void add_given_up(const Feature& f) {
    Plan with = plan_;
    std::erase_if(with.site.features, [&f](const Feature& other) { return other.id == f.id; });
    add(MoreRoom::Kind::give_up, say("{} given up", display_name(f)), std::move(with));
  }

  std::string lessened_words(const Restriction& r, double to, double now) const {
    if (r.kind == Restriction::Kind::setback)
      return say("A setback of {} instead of {} at lot edge {}", metres(plan_, to), metres(plan_, now),
                 std::to_string(r.edge + 1));
    return say("{} instead of {} kept free about {}", metres(plan_, to), metres(plan_, now),
               display_name(*find_feature(plan_.site, r.feature_id)));
  }

  Plan lessened(const Restriction& r, double to) const {
    Plan with = plan_;
    if (r.kind == Restriction::Kind::setback) {
      with.site.lot[static_cast<std::size_t>(r.edge)].setback = to;
      return with;
    }
    for (Feature& f : with.site.features)
      if (f.id == r.feature_id) {
        f.run_clearance = std::min(to, run_clearance(plan_.site, f));
        f.trench_clearance = to;
      }
    return with;
  }

  // The most that may stay of it so that another trench fits, in whole steps; nothing where even none of it
  // brings one.
  std::optional<double> least_lessened(const Restriction& r, double now) const {
    const int enough = circuits_on(lessened(r, 0).site);
    if (enough <= circuits_of(own_)) return std::nullopt;
    int stays = 0, goes = static_cast<int>(std::ceil(now / kStep));
    while (goes - stays > 1 && !stop_.stop_requested()) {
      const int middle = (stays + goes) / 2;
      (circuits_on(lessened(r, middle * kStep).site) >= enough ? stays : goes) = middle;
    }
    return stays * kStep;
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
