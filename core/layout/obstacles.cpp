// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/obstacles.h"

#include <algorithm>

#include "layout/closed_side.h"
#include "layout/held.h"

namespace underlawn {

namespace {

constexpr double kConduit = 1, kTrench = 2, kWish = 4, kRule = 8, kOffLot = 1e6;
constexpr double kOn = 2e-3;  // m

bool on_line(const Polyline& line, Point p) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(Segment{line[i - 1], line[i]}, p) < kOn) return true;
  return false;
}

bool leads_to(const Polyline& leg, Point p) {
  return on_line(leg, p) && distance(leg.front(), p) > kOn;
}

class Maker {
 public:
  Maker(const Site& drawn, const Site& site, const Confines& ground, const Wishes& wishes,
        const Layout& layout)
      : drawn_(drawn), site_(site), ground_(ground), wishes_(wishes), layout_(layout) {}

  Obstacles make(double angle) {
    add_lot();
    for (std::size_t i = 0; i < ground_.restrictions.size(); ++i) add_restriction(static_cast<int>(i));
    out_.of_ground = out_.what.size();
    for (std::size_t i = 0; i < layout_.trenches.size(); ++i) add_trench(i, angle);
    add_legs();
    if (layout_.run.line.size() > 1) add_conduit(Obstacle::Kind::run, 0, layout_.run.line);
    return std::move(out_);
  }

 private:
  InWay& add(Obstacle::Kind kind, int index, double weight) {
    out_.what.push_back({kind, index, {}});
    out_.in_way.push_back({});
    out_.in_way.back().weight = weight;
    return out_.in_way.back();
  }

  void add_lot() {
    InWay& lot = add(Obstacle::Kind::lot_line, 0, kOffLot);
    lot.lot = true;
    lot.areas = {ground_.lot};
    for (std::size_t i = 0; i < ground_.lot.size(); ++i)
      lot.capsules.push_back({ground_.lot[i], ground_.lot[(i + 1) % ground_.lot.size()], 0});
  }

  void add_restriction(int index) {
    const Restriction& r = ground_.restrictions[static_cast<std::size_t>(index)];
    const bool setback = r.kind == Restriction::Kind::setback;
    const Feature* f = setback ? nullptr : find_feature(site_, r.feature_id);
    const bool closed = !setback && closed_side_of(drawn_, wishes_, r.feature_id) >= 0;
    const bool wish = f != nullptr && (closed || f->kind == FeatureKind::no_dig);
    InWay around, itself;
    for (std::size_t i = 0; i < ground_.capsules.size(); ++i)
      if (ground_.owner[i] == index) around.capsules.push_back(ground_.capsules[i]);
    for (std::size_t i = 0; i < ground_.areas.size(); ++i)
      if (ground_.area_owner[i] == index) around.areas.push_back(ground_.areas[i]);
    itself = around;
    around.weight = wish ? kWish : kRule;
    out_.what.push_back({Obstacle::Kind::restriction, index, {}});
    out_.in_way.push_back(std::move(around));
    if (setback || wish) return;
    for (Capsule& c : itself.capsules)
      c.reach = f->kind == FeatureKind::tree ? std::min(c.reach, f->trunk_diameter / 2) : 0;
    itself.weight = kFixed;
    out_.what.push_back({Obstacle::Kind::thing, index, {}});
    out_.in_way.push_back(std::move(itself));
  }

  void add_trench(std::size_t i, double angle) {
    Held held;
    held.trenches = {middle_line(layout_.trenches[i])};
    Confines g = with_held({}, held, wishes_, angle);
    InWay& t = add(Obstacle::Kind::trench, static_cast<int>(i), kTrench);
    t.capsules = std::move(g.capsules);
    t.areas = std::move(g.areas);
  }

  void add_conduit(Obstacle::Kind kind, int index, const Polyline& line) {
    InWay& c = add(kind, index, kConduit);
    c.spare = wishes_.run_width / 2 + kOn;
    for (std::size_t i = 1; i < line.size(); ++i)
      c.capsules.push_back({line[i - 1], line[i], wishes_.run_width / 2});
  }

  void add_legs() {
    const auto& legs = layout_.header.legs;
    std::vector<std::vector<std::size_t>> serves(legs.size());
    for (std::size_t i = legs.size(); i-- > 0;) {
      for (std::size_t t = 0; t < layout_.trenches.size(); ++t)
        if (leads_to(legs[i], layout_.trenches[t].head)) serves[i].push_back(t);
      for (std::size_t later = i + 1; later < legs.size(); ++later)
        if (leads_to(legs[i], legs[later].front()))
          serves[i].insert(serves[i].end(), serves[later].begin(), serves[later].end());
    }
    for (std::size_t i = 0; i < legs.size(); ++i) {
      add_conduit(Obstacle::Kind::header, static_cast<int>(i), legs[i]);
      for (std::size_t t : serves[i]) out_.what.back().serves.push_back(out_.of_ground + t);
    }
  }

  const Site& drawn_;
  const Site& site_;
  const Confines& ground_;
  const Wishes& wishes_;
  const Layout& layout_;
  Obstacles out_;
};

}  // namespace

bool Obstacles::goes_with(std::size_t i, const std::vector<char>& hit) const {
  const auto& serves = what[i].serves;
  return !serves.empty() &&
         std::all_of(serves.begin(), serves.end(), [&hit](std::size_t t) { return hit[t]; });
}

Obstacles obstacles_of(const Site& drawn, const Site& with_closed, const Confines& ground,
                       const Wishes& wishes, const Layout& layout, double angle) {
  return Maker(drawn, with_closed, ground, wishes, layout).make(angle);
}

}  // namespace underlawn
