// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/aim.h"

#include <cmath>

#include "layout/crossings.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr std::size_t kCompleted = 6;      // arrangements of one number of trenches, best guesses
constexpr std::size_t kMoreBearings = 16;  // and the best guesses of others, where digging is not the aim
constexpr double kSameMeasure = 1e-6;
constexpr double kTreeStep = 0.1;     // m, to which the distance from trunks is found
constexpr double kFarFirst = 1000;    // m: before those that are only short
constexpr double kFarFromTrees = 60;  // m: farther off is far enough

Trench made(const Segment& s, TrenchRole role, const Wishes& w, const Coil& coil) {
  Trench t;
  t.role = role;
  t.head = s.a;
  t.end = s.b;
  t.width = w.trench_width;
  t.depth = w.trench_depth;
  t.coil = coil;
  return t;
}

double direction_of(const Whole& w) {
  if (w.field.empty() && w.locked.empty()) return 0;
  const Point u = w.field.empty() ? w.locked.front().back() - w.locked.front().front()
                                  : w.field.front().b - w.field.front().a;
  return std::atan2(u.y, u.x);
}

Site trees_kept_off(Site site, double distance) {
  for (Feature& f : site.features)
    if (f.kind == FeatureKind::tree) f.trench_clearance = std::max(trench_clearance(site, f), distance);
  return site;
}

bool has_trees(const Site& site) {
  return std::any_of(site.features.begin(), site.features.end(),
                     [](const Feature& f) { return f.kind == FeatureKind::tree; });
}

bool coil_in_run_wanted(const Keeping& s, int wanted) {
  return s.wishes.coil_in_run && wanted > 1 && s.site.entry.has_value();
}

// The greatest distance from every trunk at which as many trenches still fit, halved in to.
void add_far_from_trees(const Keeping& s, const Coil& coil, int wanted, const std::stop_token& stop,
                        Candidates& all) {
  const int needed = std::min(wanted, all.fits);
  double holds = 0, fails = s.wishes.aim == Aim::mix ? s.wishes.prices.tree_distance : kFarFromTrees;
  fails = std::clamp(fails, kTreeStep, kFarFromTrees);
  while (fails - holds > kTreeStep && !stop.stop_requested()) {
    const double middle = (holds + fails) / 2;
    const Site site = trees_kept_off(s.site, middle);
    const FieldSearch field({site, s.wishes, s.held, nullptr, s.slopes}, coil, wanted, false);
    (field.most(stop) >= needed ? holds : fails) = middle;
  }
  // Nearer ones too: the run has to come by as well.
  for (double share : {1.0, 0.75, 0.5}) {
    const Site site = trees_kept_off(s.site, share * holds);
    Candidates far =
        FieldSearch({site, s.wishes, s.held, nullptr, s.slopes}, coil, wanted, false).candidates(stop);
    for (Arrangement& a : far.found) {
      a.estimate -= share * kFarFirst;
      all.found.push_back(std::move(a));
    }
  }
}

}  // namespace

Layout drawn_layout(const Site& site, const Wishes& wishes, const Coil& coil, const Whole& whole,
                    const std::vector<Trench>& locked) {
  Layout l;
  l.header = whole.connection.header;
  l.run = whole.connection.run;
  l.direction = direction_of(whole);
  for (const Segment& s : whole.field) l.trenches.push_back(made(s, TrenchRole::field, wishes, coil));
  if (whole.in_run) l.trenches.push_back(made(*whole.in_run, TrenchRole::supply, wishes, coil));
  l.trenches.insert(l.trenches.end(), locked.begin(), locked.end());
  l.crossings = crossings_of(site, wishes, l.header, l.run);
  return l;
}

double measure_of(const Site& site, const Wishes& w, const Layout& layout, const Terrain& terrain,
                  double digging, int wanted) {
  switch (w.aim) {
    case Aim::digging:
    case Aim::circuits:
    case Aim::metres:
      return digging;
    case Aim::lawn:
      return amounts_of(site, w, layout, terrain).lawn;
    case Aim::cost:
      return money_of(amounts_of(site, w, layout, terrain), w.prices);
    case Aim::trees: {
      const Amounts a = amounts_of(site, w, layout, terrain);
      return a.trees.empty() ? 0 : -std::floor(100 * a.trees.front().nearest) / 100;
    }
    case Aim::mix: {
      const Amounts a = amounts_of(site, w, layout, terrain);
      const int missing = wanted - static_cast<int>(layout.trenches.size());
      return money_of(a, w.prices) + regret_of(a, w.prices, missing);
    }
  }
  return digging;
}

bool better(const Whole& l, const Whole& r, Aim aim) {
  if (aim == Aim::mix && (l.count() == 0) != (r.count() == 0)) return l.count() > 0;
  const bool l_run = !l.connection.run.line.empty(), r_run = !r.connection.run.line.empty();
  if (aim != Aim::mix && l.count() != r.count()) return l.count() > r.count();
  if (l_run != r_run) return l_run;
  if (l.unjoined() != r.unjoined()) return l.unjoined() < r.unjoined();
  if (std::abs(l.measure - r.measure) > kSameMeasure) return l.measure < r.measure;
  return l.cost < r.cost - kSameMeasure;
}

Candidates candidates_for(const Keeping& s, const Coil& coil, int wanted, const std::stop_token& stop) {
  if (wanted < 1) return {};
  Candidates all = FieldSearch(s, coil, wanted, coil_in_run_wanted(s, wanted)).candidates(stop);
  const bool trees_count =
      s.wishes.aim == Aim::trees || (s.wishes.aim == Aim::mix && s.wishes.prices.near_tree > 0);
  if (trees_count && has_trees(s.site) && all.fits > 0) add_far_from_trees(s, coil, wanted, stop, all);
  if (s.wishes.aim != Aim::mix) return all;
  for (int fewer = std::min(wanted, all.fits) - 1; fewer > 0 && !stop.stop_requested(); --fewer) {
    Candidates some = FieldSearch(s, coil, fewer, false).candidates(stop);
    for (Arrangement& a : some.found) all.found.push_back(std::move(a));
  }
  return all;
}

std::vector<Arrangement> worth_completing(const Keeping& keeping, std::vector<Arrangement>& found, Aim aim) {
  sort_by_guess(found);
  std::vector<Arrangement> kept, lesser;
  std::size_t of_this_count = 0, more = 0, last = 0;
  std::vector<double> bearings;
  std::vector<Arrangement> left;
  for (Arrangement& a : found) {
    if (!kept.empty() && aim != Aim::mix && a.trenches.size() + 1 < kept.front().trenches.size()) break;
    if (a.trenches.size() != last) of_this_count = more = 0, bearings.clear();
    last = a.trenches.size();
    const bool seen = std::find(bearings.begin(), bearings.end(), a.bearing.angle) != bearings.end();
    const bool another = !counts_digging(aim) && !seen && more < kMoreBearings;
    if (of_this_count >= kCompleted && !another) {
      left.push_back(std::move(a));
      continue;
    }
    // What cannot be proved legal as it was found is rare, and comes after all that can.
    if (drop_illegal(keeping, a)) {
      if (!a.trenches.empty()) lesser.push_back(std::move(a));
      continue;
    }
    more += of_this_count >= kCompleted;
    bearings.push_back(a.bearing.angle);
    for (Arrangement& v : drawn_back(keeping, a)) {
      if (of_this_count >= kCompleted && !another) break;
      ++of_this_count;
      kept.push_back(std::move(v));
    }
  }
  found = std::move(left);
  sort_by_guess(lesser);
  if (lesser.size() > kCompleted) lesser.resize(kCompleted);
  kept.insert(kept.end(), std::make_move_iterator(lesser.begin()), std::make_move_iterator(lesser.end()));
  return kept;
}

}  // namespace underlawn
