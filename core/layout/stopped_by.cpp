// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/stopped_by.h"

#include "layout/closed_side.h"
#include "layout/given.h"
#include "layout/legality.h"
#include "layout/quick_distance.h"
#include "layout/zones.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kPush = 0.03;   // m that it is pushed on
constexpr double kMeets = 2e-3;  // m that it may be nearer to what it only passes
constexpr double kThere = 0.02;  // m from the wish is there

Polyline pushed(const Polyline& at, const Polyline& to) {
  Polyline on = at;
  for (std::size_t i = 0; i < at.size(); ++i) {
    const double way = distance(at[i], to[i]);
    if (way > 0) on[i] = at[i] + std::min(1.0, kPush / way) * (to[i] - at[i]);
  }
  return on;
}

class Pushed {
 public:
  Pushed(const Site& site, const Wishes& wishes, Polyline at, Polyline on)
      : drawn_(site),
        wishes_(wishes),
        ground_(trench_ground(with_closed_sides(site, wishes))),
        before_(strip_along(at, wishes.trench_width)),
        after_(strip_along(on, wishes.trench_width)) {}

  std::vector<Reason> of_ground() const {
    const std::vector<double> before = lacking_of(before_), after = lacking_of(after_);
    std::vector<Reason> all;
    for (std::size_t i = 0; i < after.size(); ++i)
      if (after[i] > before[i] + kMeets) all.push_back(reason(ground_.restrictions[i], after[i]));
    return all;
  }

 private:
  Reason reason(const Restriction& r, double by) const {
    Reason reason;
    reason.kind = Reason::Kind::covered;
    reason.restriction = r;
    reason.short_by = by;
    if (r.kind != Restriction::Kind::feature) return reason;
    reason.closed_side = closed_side_of(drawn_, wishes_, r.feature_id);
    if (reason.closed_side >= 0) reason.restriction = {};
    return reason;
  }

  // m that the floor reaches into what each thing keeps free; 0 where it is off it.
  std::vector<double> lacking_of(const Ring& floor) const {
    std::vector<double> most(ground_.restrictions.size(), 0);
    for (std::size_t i = 0; i < ground_.capsules.size(); ++i) {
      const Capsule& c = ground_.capsules[i];
      double& of = most[static_cast<std::size_t>(ground_.owner[i])];
      // Where a side of the thing itself is crossed, how far says more than that it is.
      of = std::max(of, c.reach - off({c.a, c.b}, floor));
    }
    return most;
  }

  // m from the segment to the floor; less than 0, by as far as a corner is beyond it, where it is crossed.
  static double off(const Segment& s, const Ring& floor) {
    double least = 1e300, deepest = 0;
    bool crossed = false;
    for (std::size_t i = 0; i < floor.size(); ++i) {
      const Segment side{floor[i], floor[(i + 1) % floor.size()]};
      least = std::min(least, quick_distance(side, s));
      crossed = crossed || quick_cross(side, s);
      deepest = std::max(deepest, distance(quick_nearest(s, side.a), side.a));
    }
    return crossed ? -deepest : least;
  }

  const Site& drawn_;
  const Wishes& wishes_;
  Confines ground_;
  Ring before_, after_;
};

double lacking(const Trench& other, const Polyline& line, const Wishes& wishes) {
  const Polyline lies = middle_line(other);
  double most = 0;
  for (std::size_t i = 1; i < lies.size(); ++i)
    for (std::size_t j = 1; j < line.size(); ++j)
      most = std::max(most, lacking(Segment{lies[i - 1], lies[i]}, Segment{line[j - 1], line[j]}, wishes));
  return most;
}

}  // namespace

std::vector<Reason> stopped_by(const Site& site, const Wishes& wishes, const std::vector<Trench>& others,
                               const GivenTrench& at, const GivenTrench& to) {
  const Polyline from = line_of(at), wish = line_of(to);
  if (from.size() != wish.size() || site.lot.size() < 3 || !(wishes.trench_width > 0)) return {};
  double way = 0;
  for (std::size_t i = 0; i < from.size(); ++i) way = std::max(way, distance(from[i], wish[i]));
  if (way < kThere) return {};
  const Polyline on = pushed(from, wish);
  std::vector<Reason> all = Pushed(site, wishes, from, on).of_ground();
  for (std::size_t i = 0; i < others.size(); ++i) {
    if (!others[i].locked) continue;
    const double by = lacking(others[i], on, wishes);
    if (by <= lacking(others[i], from, wishes) + kMeets) continue;
    Reason r;
    r.kind = Reason::Kind::too_near;
    r.trench = static_cast<int>(i) + 1;
    r.short_by = by;
    all.push_back(r);
  }
  return all;
}

}  // namespace underlawn
