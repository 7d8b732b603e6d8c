// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/why.h"

#include "base/say.h"
#include "layout/closed_side.h"
#include "layout/quick_distance.h"
#include "layout/quick_legal.h"

namespace underlawn {

namespace {

constexpr double kNudge = 0.02;                  // m past where the longest trench ends, to see what is there
constexpr double kLeast = 0.1;                   // m, of a trench's stretch that is tried at the place itself
constexpr double kSlide = 0.5;                   // m between places of a trench along its stretch
constexpr double kFine = 1e-3;                   // m
constexpr double kFar = 2000;                    // m
constexpr int kDirections = 36;                  // in half a turn
constexpr double kOffsets[] = {0, 0.45, -0.45};  // of a trench's width, that its middle line may lie beside

// A stretch of straight trench, and how it lies beside the place.
struct Stretch {
  Segment line;
  double length = 0;  // m; 0: none
};

class Asked {
 public:
  Asked(const Site& site, const Wishes& wishes, const Coil& coil, const Layout& layout, Point at)
      : drawn_(site),
        wishes_(wishes),
        layout_(layout),
        length_(coil.trench_length),
        at_(at),
        site_(with_closed_sides(site, wishes)),
        open_(site_, wishes) {}

  WhyEmpty answer() {
    if (!contains(lot_ring(drawn_), at_)) {
      add(Reason::Kind::outside);
      return why_;
    }
    add_covered();
    const Stretch along = longest(layout_.direction);
    Stretch any = along;
    double any_direction = layout_.direction;
    for (int i = 0; i < kDirections && any.length < length_; ++i) {
      const double angle = layout_.direction + i * std::numbers::pi / kDirections;
      const Stretch s = longest(angle);
      if (s.length > any.length) any = s, any_direction = angle;
    }
    why_.longest_along = along.length;
    why_.longest = any.length;
    why_.longest_direction = any_direction;
    if (!why_.reasons.empty()) return why_;
    if (any.length < length_ - kFine) {
      add_stops(along, layout_.direction);
      if (any_direction != layout_.direction) add_stops(any, any_direction);
    } else {
      add_others(along.length >= length_ - kFine ? along : any);
    }
    return why_;
  }

 private:
  Reason& add(Reason::Kind kind) {
    why_.reasons.push_back({});
    why_.reasons.back().kind = kind;
    return why_.reasons.back();
  }

  Reason& add(Reason::Kind kind, int owner) {
    Reason& r = add(kind);
    const Restriction& restriction = open_.ground().restrictions[static_cast<std::size_t>(owner)];
    if (restriction.kind == Restriction::Kind::feature)
      r.closed_side = closed_side_of(drawn_, wishes_, restriction.feature_id);
    if (r.closed_side < 0) r.restriction = restriction;
    return r;
  }

  // How far the place is from where a trench's edge may lie, by owner.
  void add_covered() {
    const Ground& g = open_.ground();
    for (std::size_t owner = 0; owner < g.restrictions.size(); ++owner) {
      double nearest = 1e300, reach = 0;
      for (std::size_t i = 0; i < g.capsules.size(); ++i) {
        if (g.owner[i] != static_cast<int>(owner)) continue;
        nearest = std::min(nearest, distance(quick_nearest({g.capsules[i].a, g.capsules[i].b}, at_), at_));
        reach = g.capsules[i].reach;
      }
      bool on_it = nearest < trunk_radius(g.restrictions[owner]);
      for (std::size_t i = 0; i < g.areas.size(); ++i)
        if (g.area_owner[i] == static_cast<int>(owner) && quick_inside(g.areas[i], at_))
          nearest = -nearest, on_it = true;
      if (nearest >= reach) continue;
      Reason& r = add(Reason::Kind::covered, static_cast<int>(owner));
      r.on_it = on_it && r.closed_side < 0;
      r.short_by = r.closed_side < 0 ? reach - nearest : beyond(r.closed_side);
    }
    std::stable_sort(why_.reasons.begin(), why_.reasons.end(),
                     [](const Reason& l, const Reason& r) { return l.short_by > r.short_by; });
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

  // The longest straight trench at this angle whose floor covers the place.
  Stretch longest(double angle) const {
    const Point u = direction(angle), n = left_normal(u);
    Stretch best;
    for (double offset : kOffsets) {
      const Point p = at_ + offset * wishes_.trench_width * n;
      const Segment here{p - (kLeast / 2) * u, p + (kLeast / 2) * u};
      if (!open_.free(here)) continue;
      const Segment line{p - reach(p, -1.0 * u) * u, p + reach(p, u) * u};
      const double long_ = distance(line.a, line.b);
      if (long_ > best.length + kFine) best = {line, long_};
    }
    return best;
  }

  double reach(Point from, Point u) const {
    double open = kLeast / 2, shut = kFar;
    while (shut - open > kFine / 2) {
      const double middle = (open + shut) / 2;
      (open_.free({from, from + middle * u}) ? open : shut) = middle;
    }
    return open;
  }

  void add_stops(const Stretch& s, double angle) {
    std::vector<int> owners;
    const Segment nudged =
        s.length > 0 ? Segment{s.line.a - kNudge * direction(angle), s.line.b + kNudge * direction(angle)}
                     : Segment{at_ - (kLeast / 2) * direction(angle), at_ + (kLeast / 2) * direction(angle)};
    const Ring floor = rectangle_along(nudged, wishes_.trench_width);
    const Ground& g = open_.ground();
    for (std::size_t i = 0; i < g.capsules.size(); ++i) {
      const Segment way = quick_way(floor, {g.capsules[i].a, g.capsules[i].b});
      const bool in_way =
          distance(way.a, way.b) < g.capsules[i].reach + kFine || quick_inside(floor, g.capsules[i].a);
      if (!in_way || std::find(owners.begin(), owners.end(), g.owner[i]) != owners.end()) continue;
      owners.push_back(g.owner[i]);
      if (named(g.owner[i])) continue;
      Reason& r = add(Reason::Kind::stops_trench, g.owner[i]);
      r.short_by = length_ - s.length;
      r.direction = angle;
    }
  }

  bool named(int owner) const {
    const Restriction& r = open_.ground().restrictions[static_cast<std::size_t>(owner)];
    return std::any_of(why_.reasons.begin(), why_.reasons.end(),
                       [&](const Reason& known) { return known.closed_side < 0 && known.restriction == r; });
  }

  // The ground is open: what lies there already.
  void add_others(const Stretch& s) {
    std::vector<Polyline> trenches, conduits = layout_.header.legs;
    for (const Trench& t : layout_.trenches) trenches.push_back(middle_line(t));
    if (layout_.run.line.size() > 1) conduits.push_back(layout_.run.line);
    const bool beside = fits_on(s, QuickLegal(site_, wishes_, trenches, {}));
    if (!beside) add_too_near(s);
    if (!fits_on(s, QuickLegal(site_, wishes_, {}, conduits))) add(Reason::Kind::conduit);
    if (!why_.reasons.empty()) return;
    if (!fits_on(s, QuickLegal(site_, wishes_, trenches, conduits))) {
      add_too_near(s);
      add(Reason::Kind::conduit);
    } else if (static_cast<int>(layout_.trenches.size()) >= wishes_.circuits) {
      add(Reason::Kind::enough);
    } else if (!header_reaches(s, QuickLegal(site_, wishes_, trenches, conduits))) {
      add(Reason::Kind::no_header);
    } else {
      add(Reason::Kind::not_used);
    }
  }

  template <class Found>
  bool any_place(const Stretch& s, const Found& found) const {
    const Point u = unit(s.line.b - s.line.a);
    const double middle = dot(at_ - s.line.a, u);
    const double low = std::max(0.0, middle - length_), high = std::min(middle, s.length - length_);
    for (double from = low; from < high + kSlide; from += kSlide) {
      const Point head = s.line.a + std::min(from, std::max(low, high)) * u;
      if (found(Segment{head + kFine * u, head + (length_ - kFine) * u})) return true;
    }
    return false;
  }

  bool fits_on(const Stretch& s, const QuickLegal& legal) const {
    return any_place(s, [&](const Segment& t) { return legal.free(t); });
  }

  bool header_reaches(const Stretch& s, const QuickLegal& legal) const {
    return any_place(s, [&](const Segment& t) {
      return legal.free(t) && (contains(layout_.routable, t.a) || contains(layout_.routable, t.b));
    });
  }

  // Trenches that alone leave no place; where none does alone, the nearest.
  void add_too_near(const Stretch& s) {
    const Trench* nearest = nullptr;
    double least = 1e300;
    for (const Trench& t : layout_.trenches) {
      const Polyline line = middle_line(t);
      double apart = 1e300;
      for (std::size_t i = 1; i < line.size(); ++i)
        apart = std::min(apart, distance(quick_nearest({line[i - 1], line[i]}, at_), at_));
      if (apart < least) least = apart, nearest = &t;
      if (fits_on(s, QuickLegal(site_, wishes_, {line}, {}))) continue;
      add(Reason::Kind::too_near).trench = t.number;
      why_.reasons.back().short_by = std::max(0.0, wishes_.spacing - apart);
    }
    if (!why_.reasons.empty() || nearest == nullptr) return;
    add(Reason::Kind::too_near).trench = nearest->number;
    why_.reasons.back().short_by = std::max(0.0, wishes_.spacing - least);
  }

  const Site& drawn_;
  const Wishes& wishes_;
  const Layout& layout_;
  double length_;
  Point at_;
  Site site_;
  QuickLegal open_;
  WhyEmpty why_;
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

std::string name_of(const Site& site, const Wishes& wishes, const Reason& reason) {
  if (reason.closed_side < 0)
    return reason.on_it ? name_of(site, reason.restriction, Lifted::whole)
                        : name_of(site, reason.restriction);
  const ClosedSide& side = wishes.closed[static_cast<std::size_t>(reason.closed_side)];
  const Feature* house = find_feature(site, side.house_id);
  return say("the closed side at wall {} of {}", std::to_string(side.wall + 1),
             (house != nullptr ? display_name(*house) : say("a house")));
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
