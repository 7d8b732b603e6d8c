// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/layout.h"

#include <cmath>

#include "layout/candidates.h"
#include "layout/closed_side.h"
#include "layout/crossings.h"
#include "layout/explain.h"
#include "layout/given.h"
#include "layout/held_troubles.h"
#include "layout/numbering.h"
#include "layout/setting.h"
#include "layout/whole.h"

namespace underlawn {

namespace {

constexpr std::size_t kRouted = 6;  // arrangements with real header and run

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
    auto buildable = buildable_region(with_closed_sides(site_, wishes_));
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
    drop_illegal_lines(site_, wishes_, w);
    take(std::move(w));
    explain(site_, wishes_, conduits, unjoined_, out_);
  }

  void search() {
    const Setting setting(site_, wishes_, coil_, out_.routable);
    const int locked = static_cast<int>(setting.locked.size()), wanted = setting.wishes.circuits;
    out_.troubles = setting.troubles;
    const FieldSearch field(setting.keeping(), coil_, wanted,
                            wishes_.coil_in_run && wanted > 1 && site_.entry.has_value());
    Candidates candidates;
    if (wanted > 0) candidates = field.candidates(stop_);
    if (stop_.stop_requested()) return;
    Whole best = best_of(candidates.found, setting);
    if (best.field.empty() && locked > 0) best = only_locked(setting);
    take(best, setting.locked);
    out_.fits = locked + std::max(candidates.fits, static_cast<int>(out_.trenches.size()) - locked);
    explain(site_, wishes_, setting.conduits, unjoined_, out_);
    if (static_cast<int>(out_.trenches.size()) >= wishes_.circuits) return;
    out_.costs = field.costs(out_.fits - locked, stop_);
    std::erase_if(out_.costs, [this](const RestrictionCost& c) {  // closed sides are spoken of below
      return c.restriction.kind == Restriction::Kind::feature &&
             find_feature(site_, c.restriction.feature_id) == nullptr;
    });
    const auto held =
        held_troubles(site_, wishes_, coil_, out_.routable, static_cast<int>(out_.trenches.size()), stop_);
    out_.troubles.insert(out_.troubles.end(), held.begin(), held.end());
  }

  Whole best_of(std::vector<Arrangement>& found, const Setting& setting) const {
    const Keeping keeping = setting.keeping();
    drop_illegal(keeping, found);
    add_drawn_back(keeping, found);
    sort_by_guess(found);
    const Completer completer(keeping, coil_, setting.conduits, stop_);
    Whole best;
    std::size_t routed = 0, last_count = 0;
    for (const Arrangement& a : found) {
      if (stop_.stop_requested()) break;
      if (a.trenches.size() != last_count) routed = 0;
      last_count = a.trenches.size();
      if (routed++ >= kRouted || static_cast<int>(last_count) + 1 < best.count()) continue;
      Whole w = completer.complete(a);
      if (w.count() > keeping.wishes.circuits) continue;
      if (better(w, best)) best = std::move(w);
    }
    return best;
  }

  Whole only_locked(const Setting& setting) const {
    Whole w;
    w.locked = setting.held.trenches;
    Arrangement a;
    for (const Polyline& line : w.locked) a.trenches.push_back({line.front(), line.back()});
    const Segment first = {w.locked.front()[0], w.locked.front()[1]};
    a.bearing.angle = w.angle = std::atan2(first.b.y - first.a.y, first.b.x - first.a.x);
    w.connection = connect(setting.conduits, a, std::nullopt);
    drop_illegal_lines(site_, wishes_, w);
    return w;
  }

  void take(const Whole& best, const std::vector<Trench>& locked = {}) {
    if (best.count() == 0 && locked.empty()) return;
    out_.header = best.connection.header;
    out_.run = best.connection.run;
    out_.direction = direction_of(best);
    add_trenches(best);
    out_.trenches.insert(out_.trenches.end(), locked.begin(), locked.end());
    number_across_field(out_.trenches, out_.direction, site_.entry);
    out_.crossings = crossings_of(site_, wishes_, out_.header, out_.run);
    unjoined_ = best.unjoined();
  }

  static double direction_of(const Whole& w) {
    if (w.field.empty() && w.locked.empty()) return 0;
    const Point u = w.field.empty() ? w.locked.front().back() - w.locked.front().front()
                                    : w.field.front().b - w.field.front().a;
    return std::atan2(u.y, u.x);
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
