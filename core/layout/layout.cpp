// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/layout.h"

#include <cmath>

#include "layout/candidates.h"
#include "layout/costs.h"
#include "layout/crossings.h"
#include "layout/explain.h"
#include "layout/given.h"
#include "layout/numbering.h"
#include "layout/whole.h"

namespace underlawn {

namespace {

constexpr std::size_t kRouted = 6;  // arrangements with real header and run
constexpr int kMoreThanWanted = 3;
constexpr int kMostCircuits = 1000;

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
    drop_illegal_lines(site_, wishes_, w);
    take(std::move(w));
    explain(site_, wishes_, conduits, unjoined_, out_);
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
    Candidates candidates = gather(s, bearings, stop_);
    if (stop_.stop_requested()) return;
    const Conduits conduits = conduits_for(site_, wishes_, out_.routable);
    take(best_of(candidates.found, conduits));
    out_.fits = std::max(candidates.fits, static_cast<int>(out_.trenches.size()));
    explain(site_, wishes_, conduits, unjoined_, out_);
    if (static_cast<int>(out_.trenches.size()) < wishes_.circuits)
      out_.costs = restriction_costs(s, bearings, out_.fits, stop_);
  }

  Whole best_of(std::vector<Arrangement>& found, const Conduits& conduits) const {
    drop_illegal(site_, wishes_, found);
    add_drawn_back(site_, wishes_, found);
    sort_by_guess(found);
    const Completer completer(site_, wishes_, coil_, conduits, stop_);
    Whole best;
    std::size_t routed = 0, last_count = 0;
    for (const Arrangement& a : found) {
      if (stop_.stop_requested()) break;
      if (a.trenches.size() != last_count) routed = 0;
      last_count = a.trenches.size();
      if (routed++ >= kRouted || static_cast<int>(last_count) + 1 < best.count()) continue;
      Whole w = completer.complete(a);
      if (w.count() > wishes_.circuits) continue;
      if (better(w, best)) best = std::move(w);
    }
    return best;
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
    number_across_field(out_.trenches, out_.direction, site_.entry);
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
