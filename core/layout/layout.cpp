// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/layout.h"

#include <cmath>

#include "layout/closed_side.h"
#include "layout/explain.h"
#include "layout/free_lengths.h"
#include "layout/given.h"
#include "layout/groups.h"
#include "layout/held_troubles.h"
#include "layout/kept_run.h"
#include "layout/locked_in_place.h"
#include "layout/longest_field.h"
#include "layout/numbering.h"
#include "layout/shifted_run.h"

namespace underlawn {

namespace {

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
      take(w);
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
    take(w);
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
    Whole best = best_whole(setting).of(std::move(candidates.found), coil_);
    if (best.connection.run.line.empty()) try_within_reach(setting, best);
    if (best.field.empty() && locked > 0) best = only_locked(setting);
    take(best, setting.locked);
    out_.fits = std::max(locked + candidates.fits, static_cast<int>(out_.trenches.size()));
  }

  void place_free_lengths(const Setting& setting) {
    LongestField found = longest_field(setting, coil_, best_whole(setting), stop_);
    if (stop_.stop_requested()) return;
    best_bearings_ = found.bearings;
    out_.fits = found.fits;
    if (found.whole.field.empty() && !setting.locked.empty()) found.whole = only_locked(setting);
    settle_run(found.whole);
    take(found.whole, setting.locked);
    fit_coils(wishes_, coil_, out_.trenches);
  }

  void settle_run(Whole& whole) const {
    const Conduits conduits = conduits_for(site_, wishes_, out_.routable);
    shift_run(site_, wishes_, conduits, whole);
    keep_run(site_, wishes_, conduits, whole);
  }

  // Trenches where the house can be reached, where the best place cannot.
  void try_within_reach(const Setting& setting, Whole& best) const {
    if (setting.conduits.stubs.empty() || best.count() == 0) return;
    const std::vector<Ring> closed = out_of_reach(setting.conduits);
    if (closed.empty()) return;
    Keeping keeping = setting.keeping();
    keeping.out_of_reach = &closed;
    Candidates within = candidates_for(keeping, coil_, setting.wishes.circuits, stop_);
    Whole other = best_whole(setting).of(std::move(within.found), coil_);
    if (better(other, best, wishes_.aim)) best = std::move(other);
  }

  void place_in_groups(const Setting& setting) {
    Grouped all = place_groups(site_, setting, coil_, stop_);
    if (stop_.stop_requested()) return;
    if (all.whole.field.empty() && !setting.locked.empty()) all.whole = only_locked(setting);
    settle_run(all.whole);
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
    const auto held = held_troubles(site_, wishes_, coil_, out_.routable, placed, stop_);
    out_.troubles.insert(out_.troubles.end(), held.begin(), held.end());
  }

  BestWhole best_whole(const Setting& setting) const { return {site_, wishes_, coil_, setting, stop_}; }

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
  int unjoined_ = 0;
  std::vector<Bearing> best_bearings_;
};

// Trenches that are locked where they lie anyway leave the rest there: the layout without the locks, if it
// has them all. What was shown then lay there too and is kept whole: a search round locks takes thrice as
// long, and a drag is not to need it as long as the lock forces nothing.
std::optional<Layout> with_locks_in_place(const Site& site, const Wishes& wishes, const Coil& coil,
                                          const std::stop_token& stop) {
  if (wishes.locked.empty() || !wishes.given.empty()) return std::nullopt;
  std::vector<Trench> locked;
  for (std::size_t i = 0; i < wishes.locked.size(); ++i) {
    auto trench = locked_trench(wishes, i, coil);
    if (!trench || !may_be_searched(*trench, wishes, coil)) return std::nullopt;
    locked.push_back(std::move(*trench));
  }
  Wishes free = wishes;
  free.locked.clear();
  free.kept = kept_with_locked(wishes);
  Layout open = Placer(site, free, coil, stop).place();
  return lock_in_place(open.trenches, locked) ? std::optional(std::move(open)) : std::nullopt;
}

}  // namespace

Layout make_layout(const Site& site, const Wishes& wishes, const Coil& coil, std::stop_token stop) {
  if (auto in_place = with_locks_in_place(site, wishes, coil, stop)) return std::move(*in_place);
  return Placer(site, wishes, coil, std::move(stop)).place();
}

}  // namespace underlawn
