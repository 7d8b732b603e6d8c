// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/layout.h"

#include <cmath>

#include "layout/aim.h"
#include "layout/calm.h"
#include "layout/closed_side.h"
#include "layout/explain.h"
#include "layout/free_lengths.h"
#include "layout/given.h"
#include "layout/groups.h"
#include "layout/held_troubles.h"
#include "layout/numbering.h"
#include "layout/opened_way.h"

namespace underlawn {

namespace {

constexpr double kNearlyAll = 0.995;  // of the metres: no more to be sought for
constexpr int kMostOpened = 12;       // arrangements of free lengths to which ways are opened
constexpr double kGuessedOver = 2;    // m that a guess of the digging may be above it

class Placer {
 public:
  Placer(const Site& site, const Wishes& wishes, const Coil& coil, std::stop_token stop)
      : site_(site), wishes_(wishes), coil_(coil), stop_(std::move(stop)) {
    out_.wanted = wishes.circuits;
  }

  Layout place() {
    if (!wishes_.given.empty()) return place_given();
    if (auto trouble = ground_trouble()) out_.troubles.push_back(*trouble);
    if (!out_.troubles.empty() || (wishes_.circuits == 0 && wishes_.locked.empty())) return std::move(out_);
    search();
    return std::move(out_);
  }

 private:
  std::optional<Trouble> ground_trouble() {
    const Region bands = setback_bands(site_);
    auto buildable = buildable_region(with_closed_sides(site_, wishes_), bands);
    if (!buildable) return buildable.error();
    auto routable = routable_region(site_, bands);
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
    for (const Trench& t : *given) {
      w.field.push_back({t.head, t.end});
      w.bends.push_back(t.bends);
    }
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
    a.bends = w.bends;
    a.bearing.angle = w.angle = std::atan2(w.field[0].b.y - w.field[0].a.y, w.field[0].b.x - w.field[0].a.x);
    const Conduits conduits = conduits_for(site_, wishes_, out_.routable);
    w.connection = Joiner(conduits, a).join();
    square_up_crossings(site_, wishes_, w);
    drop_illegal_lines(site_, wishes_, w);
    take(std::move(w));
    explain(site_, wishes_, conduits, unjoined_, out_);
  }

  void search() {
    const Setting setting(site_, wishes_, coil_, out_.routable);
    out_.troubles = setting.troubles;
    if (wishes_.groups > 1 && setting.wishes.circuits > 1)
      place_in_groups(setting);
    else if (wishes_.aim == Aim::metres)
      place_free_lengths(setting);
    else
      place_one_field(setting);
    if (stop_.stop_requested()) return;
    explain(site_, wishes_, setting.conduits, unjoined_, out_);
    if (static_cast<int>(out_.trenches.size()) < wishes_.circuits) say_what_is_missing(setting);
  }

  void place_one_field(const Setting& setting) {
    const int locked = static_cast<int>(setting.locked.size());
    Candidates candidates = candidates_for(setting.keeping(), coil_, setting.wishes.circuits, stop_);
    if (stop_.stop_requested()) return;
    best_bearings_ = candidates.bearings;
    Whole best = best_of(candidates.found, setting, coil_);
    if (best.connection.run.line.empty()) try_within_reach(setting, best);
    if (best.field.empty() && locked > 0) best = only_locked(setting);
    take(best, setting.locked);
    out_.fits = std::max(locked + candidates.fits, static_cast<int>(out_.trenches.size()));
  }

  // The longest rows; and where those all are as long as they may be or cannot be joined, arrangements of one
  // length after another, each trench then drawn out as far as it may go.
  void place_free_lengths(const Setting& setting) {
    Whole best;
    const double most = longest_joined(setting, best);
    const bool settled = best.unjoined() == 0 && !best.connection.run.line.empty();
    const double all_most = setting.wishes.circuits * wishes_.most_length;
    if (!settled || metres_of(best) < kNearlyAll * most || metres_of(best) > kNearlyAll * all_most)
      try_one_length_after_another(setting, best);
    if (stop_.stop_requested()) return;
    out_.fits = std::max(out_.fits, static_cast<int>(best.field.size() + setting.locked.size()));
    if (best.field.empty() && !setting.locked.empty()) best = only_locked(setting);
    take(best, setting.locked);
    fit_coils(wishes_, coil_, out_.trenches);
  }

  // m, of the longest there are, joined or not.
  double longest_joined(const Setting& setting, Whole& best) {
    const Keeping keeping = setting.keeping();
    const LengthBounds bounds{wishes_.least_length, wishes_.most_length};
    Coil shortest = coil_;
    shortest.trench_length = bounds.least;
    const FieldSearch field(keeping, shortest, setting.wishes.circuits, false);
    const std::vector<Arrangement> longest = field.longest(bounds, stop_);
    const Completer completer(keeping, coil_, setting.conduits, stop_);
    double most = 0;
    for (const Arrangement& a : longest) {
      if (stop_.stop_requested()) break;
      const double metres = metres_of(a.trenches);
      most = std::max(most, metres);
      const bool whole = best.unjoined() == 0 && !best.connection.run.line.empty();
      if (whole && metres < metres_of(best)) continue;
      for (Whole& w : ways_to_join(keeping, completer, setting.conduits, a, best)) {
        if (w.field.empty()) continue;
        w.measure = w.cost;
        draw_out(keeping, w);
        if (!more_metres(w, best)) continue;
        best = std::move(w);
        best_bearings_ = {a.bearing};
      }
    }
    return most;
  }

  // Without the trenches that no header reaches, and with ways to them opened.
  std::vector<Whole> ways_to_join(const Keeping& keeping, const Completer& completer,
                                  const Conduits& conduits, const Arrangement& a, const Whole& best) {
    std::vector<Whole> all = {joined_alone(keeping, completer, a)};
    const Whole& plain = all.front();
    const bool whole = plain.field.size() == a.trenches.size() && plain.unjoined() == 0 &&
                       !plain.connection.run.line.empty();
    if (whole || opened_++ >= kMostOpened) return all;
    const bool had = best.unjoined() == 0 && !best.connection.run.line.empty();
    if (auto w = with_ways_opened(keeping, conduits, completer, a, had ? metres_of(best) : 0))
      all.push_back(std::move(*w));
    return all;
  }

  void try_one_length_after_another(const Setting& setting, Whole& best) {
    const int locked = static_cast<int>(setting.locked.size());
    for (double length : lengths_to_seek(setting.keeping(), coil_, setting.wishes.circuits, stop_)) {
      Coil coil = coil_;
      coil.trench_length = length;
      Candidates candidates = candidates_for(setting.keeping(), coil, setting.wishes.circuits, stop_);
      if (stop_.stop_requested()) return;
      const Keeping keeping = setting.keeping();
      const Completer completer(keeping, coil, setting.conduits, stop_);
      Whole w = joined_alone(completer, best_of(candidates.found, setting, coil));
      draw_out(setting.keeping(), w);
      if (more_metres(w, best)) {
        best = std::move(w);
        best_bearings_ = candidates.bearings;
      }
      out_.fits = std::max(out_.fits, locked + candidates.fits);
    }
  }

  // Trenches where the house can be reached, where the best place cannot.
  void try_within_reach(const Setting& setting, Whole& best) const {
    if (setting.conduits.stubs.empty() || best.count() == 0) return;
    const std::vector<Ring> closed = out_of_reach(setting.conduits);
    if (closed.empty()) return;
    Keeping keeping = setting.keeping();
    keeping.out_of_reach = &closed;
    Candidates within = candidates_for(keeping, coil_, setting.wishes.circuits, stop_);
    Whole other = best_of(within.found, setting, coil_);
    if (better(other, best, wishes_.aim)) best = std::move(other);
  }

  void place_in_groups(const Setting& setting) {
    Grouped all = place_groups(site_, setting, coil_, stop_);
    if (stop_.stop_requested()) return;
    if (all.whole.field.empty() && !setting.locked.empty()) all.whole = only_locked(setting);
    take(all.whole, setting.locked, all.sizes);
    out_.fits = static_cast<int>(setting.locked.size()) + all.fits;
    const int asked = std::min(wishes_.groups, setting.wishes.circuits),
              made = static_cast<int>(all.sizes.size());
    if (made > 0 && made < asked) out_.troubles.push_back(groups_missing(made, asked));
  }

  void say_what_is_missing(const Setting& setting) {
    const int placed = static_cast<int>(out_.trenches.size()),
              locked = static_cast<int>(setting.locked.size());
    if (wishes_.aim == Aim::mix && placed < out_.fits) return;  // left out because that is dearer
    const FieldSearch field(setting.keeping(), coil_, wishes_.circuits - locked, false);
    out_.costs = field.costs(best_bearings_, out_.fits - locked, stop_);
    std::erase_if(out_.costs, [this](const RestrictionCost& c) {  // closed sides are spoken of below
      return c.restriction.kind == Restriction::Kind::feature &&
             find_feature(site_, c.restriction.feature_id) == nullptr;
    });
    const auto held = held_troubles(site_, wishes_, coil_, out_.routable, placed, stop_);
    out_.troubles.insert(out_.troubles.end(), held.begin(), held.end());
  }

  Whole best_of(std::vector<Arrangement>& found, const Setting& setting, const Coil& coil) const {
    const Keeping keeping = setting.keeping();
    const Completer completer(keeping, coil, setting.conduits, stop_);
    Whole best;
    std::optional<Arrangement> won;
    const auto weighed = [&](const Arrangement& a, bool shift) {
      Whole w = completer.complete(a, shift);
      w.measure = counts_digging(wishes_.aim) ? w.cost : measured(w, setting);
      w.measure -= calm_worth(w);
      return w;
    };
    if (auto kept = as_kept(keeping, coil.trench_length)) found.push_back(std::move(*kept));
    for (const Arrangement& a : worth_completing(keeping, std::move(found), wishes_.aim)) {
      if (stop_.stop_requested()) break;
      if (cannot_win(a, best)) continue;
      if (wishes_.aim != Aim::mix && static_cast<int>(a.trenches.size()) + 1 < best.count()) continue;
      Whole w = weighed(a, false);
      if (w.count() > keeping.wishes.circuits || !better(w, best, wishes_.aim)) continue;
      best = std::move(w);
      won = a;
    }
    if (!won || stop_.stop_requested()) return best;
    Whole shifted = weighed(*won, true);
    return better(shifted, best, wishes_.aim) ? shifted : best;
  }

  // By the guess of its digging, which falls short of it as a rule.
  bool cannot_win(const Arrangement& a, const Whole& best) const {
    return counts_digging(wishes_.aim) && best.field.size() == a.trenches.size() &&
           !best.connection.run.line.empty() && best.unjoined() == 0 &&
           a.estimate - kGuessedOver - kLikenessWorth * likeness(a.trenches, wishes_.kept) >=
               best.digging - calm_worth(best);
  }

  // What lying near the trenches last shown takes off the measure.
  double calm_worth(const Whole& w) const {
    const double most = counts_digging(wishes_.aim) ? kLikenessWorth : kLikenessShare * std::abs(w.measure);
    return most * likeness(w.field, wishes_.kept);
  }

  double measured(const Whole& w, const Setting& setting) const {
    return measure_of(site_, wishes_, drawn_layout(site_, wishes_, coil_, w, setting.locked), setting.terrain,
                      w.cost, wishes_.circuits);
  }

  Whole only_locked(const Setting& setting) const {
    Whole w;
    w.locked = setting.held.trenches;
    Arrangement a;
    for (const Polyline& line : w.locked) {
      a.trenches.push_back({line.front(), line.back()});
      a.bends.emplace_back(line.begin() + 1, line.end() - 1);
    }
    const Segment first = {w.locked.front()[0], w.locked.front()[1]};
    a.bearing.angle = w.angle = std::atan2(first.b.y - first.a.y, first.b.x - first.a.x);
    w.connection = Joiner(setting.conduits, a).join();
    square_up_crossings(site_, wishes_, w);
    drop_illegal_lines(site_, wishes_, w);
    return w;
  }

  void take(const Whole& best, const std::vector<Trench>& locked = {},
            const std::vector<std::size_t>& groups = {}) {
    if (best.count() == 0 && locked.empty()) return;
    Layout drawn = drawn_layout(site_, wishes_, coil_, best, locked);
    out_.header = std::move(drawn.header);
    out_.run = std::move(drawn.run);
    out_.direction = drawn.direction;
    out_.trenches = std::move(drawn.trenches);
    out_.crossings = std::move(drawn.crossings);
    if (groups.empty())
      number_across_field(out_.trenches, out_.direction, site_.entry);
    else
      number_by_groups(out_.trenches, groups, site_.entry);
    for (std::size_t size : groups) out_.groups.push_back(static_cast<int>(size));
    unjoined_ = best.unjoined();
  }

  const Site& site_;
  const Wishes& wishes_;
  const Coil& coil_;
  std::stop_token stop_;
  Layout out_;
  int opened_ = 0;
  int unjoined_ = 0;
  std::vector<Bearing> best_bearings_;
};

}  // namespace

Layout make_layout(const Site& site, const Wishes& wishes, const Coil& coil, std::stop_token stop) {
  return Placer(site, wishes, coil, std::move(stop)).place();
}

}  // namespace underlawn
