// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/why.h"

#include <numbers>

#include "base/say.h"
#include "layout/closed_side.h"
#include "layout/legality.h"
#include "layout/obstacles.h"
#include "layout/quick_distance.h"

namespace underlawn {

namespace {

constexpr double kFine = 1e-3;                   // m
constexpr int kDirections = 36;                  // in half a turn
constexpr double kOffsets[] = {0, 0.45, -0.45};  // of a trench's width, that its middle line may lie beside

class Asked {
 public:
  Asked(const Site& site, const Wishes& wishes, const Coil& coil, const Layout& layout, Point at)
      : drawn_(site),
        wishes_(wishes),
        layout_(layout),
        length_(coil.trench_length),
        at_(at),
        site_(with_closed_sides(site, wishes)),
        ground_(trench_ground(site_)) {}

  WhyEmpty answer() {
    if (!contains(lot_ring(drawn_), at_)) {
      add(Reason::Kind::outside);
      return why_;
    }
    for (int i = 0; i < kDirections; ++i) try_direction(i);
    if (easiest_.trench.blockers.empty())
      add_room();
    else
      add_blockers();
    std::stable_sort(why_.reasons.begin(), why_.reasons.end(), binds_more);
    return why_;
  }

 private:
  // The easiest trench found over the place, and how long one could be there on the bare lot.
  struct Tried {
    TrenchOver trench;
    double angle = 0, open = 0;
    Obstacles obstacles;
  };

  void try_direction(int i) {
    const double angle = layout_.direction + i * std::numbers::pi / kDirections;
    Obstacles all = obstacles_of(drawn_, site_, ground_, wishes_, layout_, angle);
    std::optional<Tried> better;
    double open = 0;
    for (double offset : kOffsets) {
      const LineOver line{at_ + offset * wishes_.trench_width * left_normal(direction(angle)), angle};
      const LineCut cut(all.in_way, line, wishes_.trench_width);
      open = std::max(open, cut.open(all.of_ground));
      TrenchOver t = cut.easiest(
          length_, [&all](std::size_t k, const std::vector<char>& hit) { return all.goes_with(k, hit); });
      if (t.weight < std::min(easiest_.trench.weight, better ? better->trench.weight : 1e300))
        better = Tried{std::move(t), angle, cut.open(all.of_ground), {}};
    }
    if (better) {
      easiest_ = std::move(*better);
      easiest_.obstacles = std::move(all);
    }
    if (i == 0) why_.longest_along = open;
    if (open <= why_.longest + kFine) return;
    why_.longest = open;
    why_.longest_direction = angle;
  }

  Reason& add(Reason::Kind kind) {
    why_.reasons.push_back({});
    why_.reasons.back().kind = kind;
    return why_.reasons.back();
  }

  void add_blockers() {
    for (std::size_t i : easiest_.trench.blockers) {
      const Obstacle& o = easiest_.obstacles.what[i];
      switch (o.kind) {
        case Obstacle::Kind::lot_line:
          add_lot_line();
          break;
        case Obstacle::Kind::thing:
        case Obstacle::Kind::restriction:
          add_restriction(o.index);
          break;
        case Obstacle::Kind::trench:
          add_trench(layout_.trenches[static_cast<std::size_t>(o.index)]);
          break;
        case Obstacle::Kind::header:
          add_conduit(Reason::Kind::header, layout_.header.legs[static_cast<std::size_t>(o.index)]);
          break;
        case Obstacle::Kind::run:
          add_conduit(Reason::Kind::run, layout_.run.line);
      }
    }
  }

  // The trench lacks so much between the lot lines at its ends.
  void add_lot_line() {
    for (std::size_t i = 0; i < drawn_.lot.size(); ++i) {
      const Segment edge{drawn_.lot[i].at, drawn_.lot[(i + 1) % drawn_.lot.size()].at};
      if (quick_distance(edge, easiest_.trench.line) < wishes_.trench_width / 2)
        add_restriction(static_cast<int>(i));
    }
  }

  void add_restriction(int owner) {
    Reason r;
    r.restriction = ground_.restrictions[static_cast<std::size_t>(owner)];
    if (r.restriction.kind == Restriction::Kind::feature)
      r.closed_side = closed_side_of(drawn_, wishes_, r.restriction.feature_id);
    if (r.closed_side >= 0) r.restriction = {};
    if (named(r)) return;
    const auto [nearest, reach, on_it] = near(owner);
    r.kind = nearest < reach ? Reason::Kind::covered : Reason::Kind::stops_trench;
    r.on_it = on_it && r.closed_side < 0;
    if (r.kind == Reason::Kind::covered)
      r.short_by = r.closed_side < 0 ? reach - nearest : beyond(r.closed_side);
    else if (easiest_.open > 0)
      r.short_by = length_ - easiest_.open;
    r.direction = easiest_.angle;
    why_.reasons.push_back(r);
  }

  bool named(const Reason& r) const {
    return std::any_of(why_.reasons.begin(), why_.reasons.end(), [&r](const Reason& known) {
      return known.trench == 0 && known.closed_side == r.closed_side && known.restriction == r.restriction;
    });
  }

  struct Near {
    double nearest, reach;  // m from the place; less than 0 inside
    bool on_it;
  };
  Near near(int owner) const {
    double nearest = 1e300, reach = 0;
    for (std::size_t i = 0; i < ground_.capsules.size(); ++i) {
      if (ground_.owner[i] != owner) continue;
      const Capsule& c = ground_.capsules[i];
      nearest = std::min(nearest, distance(quick_nearest({c.a, c.b}, at_), at_));
      reach = c.reach;
    }
    bool on_it = nearest < trunk_radius(ground_.restrictions[static_cast<std::size_t>(owner)]);
    for (std::size_t i = 0; i < ground_.areas.size(); ++i)
      if (ground_.area_owner[i] == owner && quick_inside(ground_.areas[i], at_))
        nearest = -nearest, on_it = true;
    return {nearest, reach, on_it};
  }

  double trunk_radius(const Restriction& r) const {
    const Feature* f = r.kind == Restriction::Kind::feature ? find_feature(drawn_, r.feature_id) : nullptr;
    return f != nullptr && f->kind == FeatureKind::tree ? f->trunk_diameter / 2 : 0;
  }

  // m past the line of a closed wall.
  double beyond(int closed_side) const {
    const ClosedSide& side = wishes_.closed[static_cast<std::size_t>(closed_side)];
    const Ring& house = find_feature(drawn_, side.house_id)->points;
    const Point a = house[static_cast<std::size_t>(side.wall)];
    const Point b = house[(static_cast<std::size_t>(side.wall) + 1) % house.size()];
    return std::abs(cross(unit(b - a), at_ - a));
  }

  // How much further from it the trench would have to lie.
  void add_trench(const Trench& t) {
    Reason& r = add(Reason::Kind::too_near);
    r.trench = t.number;
    r.on_it = quick_inside(floor_of(t), at_);
    const Polyline line = middle_line(t);
    for (std::size_t i = 1; i < line.size(); ++i)
      r.short_by = std::max(r.short_by, lacking({line[i - 1], line[i]}, easiest_.trench.line, wishes_));
  }

  void add_conduit(Reason::Kind kind, const Polyline& line) {
    bool here = false;
    for (std::size_t i = 1; i < line.size(); ++i)
      here = here || distance(quick_nearest({line[i - 1], line[i]}, at_), at_) <
                         (wishes_.run_width + wishes_.trench_width) / 2;
    for (Reason& known : why_.reasons)
      if (known.kind == kind) {
        known.on_it = known.on_it || here;
        return;
      }
    add(kind).on_it = here;
  }

  void add_room() {
    const Segment& t = easiest_.trench.line;
    if (static_cast<int>(layout_.trenches.size()) >= wishes_.circuits)
      add(Reason::Kind::enough);
    else if (!contains(layout_.routable, t.a) && !contains(layout_.routable, t.b))
      add(Reason::Kind::no_header);
    else
      add(Reason::Kind::not_used);
  }

  // What cannot be moved as easily comes first, and of that what is short by most.
  static bool binds_more(const Reason& l, const Reason& r) {
    return l.kind != r.kind ? l.kind < r.kind : l.short_by > r.short_by;
  }

  const Site& drawn_;
  const Wishes& wishes_;
  const Layout& layout_;
  double length_;
  Point at_;
  Site site_;
  Confines ground_;
  WhyEmpty why_;
  Tried easiest_;
};

std::optional<Trouble> not_there(const Site& site, const Restriction& r) {
  if (r.kind == Restriction::Kind::setback) {
    if (r.edge >= 0 && static_cast<std::size_t>(r.edge) < site.lot.size()) return std::nullopt;
    return Trouble{"restriction_not_there", say("lot edge"), std::to_string(r.edge + 1),
                   say("1 to {}", std::to_string(site.lot.size())), say("Ask about an edge of this lot.")};
  }
  if (find_feature(site, r.feature_id) != nullptr) return std::nullopt;
  return Trouble{"restriction_not_there", say("feature"), std::to_string(r.feature_id),
                 say("one of this lot"), say("Ask about something that is drawn.")};
}

double digging(const Layout& l) {
  double sum = l.header.length + l.run.length;
  for (const Trench& t : l.trenches)
    if (t.role == TrenchRole::field) sum += length_of(t);
  return sum;
}

}  // namespace

WhyEmpty what_keeps_out(const Site& site, const Wishes& wishes, const Coil& coil, const Layout& layout,
                        Point at) {
  if (site.lot.size() < 3 || !(wishes.trench_width > 0) || !(coil.trench_length > 0)) return {};
  return Asked(site, wishes, coil, layout, at).answer();
}

namespace {

std::string name_of_closed(const Site& site, const Wishes& wishes, const Reason& reason) {
  const ClosedSide& side = wishes.closed[static_cast<std::size_t>(reason.closed_side)];
  const Feature* house = find_feature(site, side.house_id);
  return say("the closed side at wall {} of {}", std::to_string(side.wall + 1),
             (house != nullptr ? display_name(*house) : say("a house")));
}

}  // namespace

std::string name_of(const Site& site, const Wishes& wishes, const Reason& reason) {
  if (reason.closed_side >= 0) return name_of_closed(site, wishes, reason);
  return reason.on_it ? name_of(site, reason.restriction, Lifted::whole) : name_of(site, reason.restriction);
}

std::string name_with_width(const Site& site, const Wishes& wishes, const Reason& reason, UnitSystem units) {
  if (reason.closed_side >= 0 || reason.on_it) return name_of(site, wishes, reason);
  return name_with_width(site, reason.restriction, usual_lifting(reason.restriction), units);
}

Result<RestrictionPrice> cost_of(const Site& site, const Wishes& wishes, const Coil& coil,
                                 const Restriction& r, std::stop_token stop) {
  return cost_of(site, wishes, coil, make_layout(site, wishes, coil, stop), r, stop);
}

Result<RestrictionPrice> cost_of(const Site& site, const Wishes& wishes, const Coil& coil, const Layout& with,
                                 const Restriction& r, std::stop_token stop) {
  if (auto trouble = not_there(site, r)) return refuse(*trouble);
  RestrictionPrice price;
  price.circuits = price.circuits_without = static_cast<int>(with.trenches.size());
  price.digging = price.digging_without = digging(with);
  for (const LiftedSite& open : liftings(site, r)) {
    const Layout free = make_layout(open.site, wishes, coil, stop);
    const int circuits = static_cast<int>(free.trenches.size());
    const bool gains =
        circuits > price.circuits_without ||
        (circuits == price.circuits_without && digging(free) < price.digging_without - kWorthDigging);
    if (price.lifted && !gains) continue;
    price.lifted = open.what;
    price.circuits_without = circuits;
    price.digging_without = digging(free);
  }
  return price;
}

}  // namespace underlawn
