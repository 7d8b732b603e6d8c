// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/lifted.h"

#include "base/say.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

// No root zone either, but not into the trunk.
void lift_clearance(Feature& f) {
  const double bark = f.kind == FeatureKind::tree ? f.trunk_diameter / 2 : 0;
  if (f.kind == FeatureKind::tree) f.trunk_diameter = 0;
  f.trench_clearance = f.run_clearance = bark;
}

bool has_clearance(const Site& site, const Feature& f) {
  const double bark = f.kind == FeatureKind::tree ? f.trunk_diameter / 2 : 0;
  return trench_clearance(site, f) > bark || (run_clearance(site, f) > bark && !crossable(f));
}

bool is_root_zone(const Site& site, const Feature& f) {
  return f.kind == FeatureKind::tree && !(trench_clearance(site, f) > root_zone_radius(site, f));
}

std::vector<LiftedSite> edge_liftings(const Site& site, int edge) {
  if (edge < 0 || static_cast<std::size_t>(edge) >= site.lot.size()) return {};
  const auto at = static_cast<std::size_t>(edge);
  if (!(site.lot[at].setback > 0)) return {};
  LiftedSite open{Lifted::setback, site};
  open.site.lot[at].setback = 0;
  return {std::move(open)};
}

}  // namespace

std::vector<LiftedSite> liftings(const Site& site, const Restriction& r) {
  if (r.kind == Restriction::Kind::setback) return edge_liftings(site, r.edge);
  const Feature* f = find_feature(site, r.feature_id);
  if (f == nullptr) return {};
  const auto at = f - site.features.data();
  std::vector<LiftedSite> all;
  if (has_clearance(site, *f)) {
    all.push_back({Lifted::clearance, site});
    lift_clearance(all.back().site.features[static_cast<std::size_t>(at)]);
  }
  if (f->kind == FeatureKind::no_dig) {
    all.push_back({Lifted::whole, site});
    all.back().site.features.erase(all.back().site.features.begin() + at);
  }
  return all;
}

Lifted most_lifted(const Site& site, const Restriction& r) {
  const std::vector<LiftedSite> all = liftings(site, r);
  return all.empty() ? Lifted::clearance : all.back().what;
}

std::string name_of(const Site& site, const Restriction& r) {
  return name_of(site, r, usual_lifting(r));
}

std::string name_of(const Site& site, const Restriction& r, Lifted what) {
  if (r.kind == Restriction::Kind::setback)
    return say("the setback of lot edge {}", std::to_string(r.edge + 1));
  const Feature* f = find_feature(site, r.feature_id);
  if (f == nullptr) return say("a clearance");
  if (what == Lifted::whole) return display_name(*f);
  if (is_root_zone(site, *f)) return say("the root zone of {}", display_name(*f));
  return say("the clearance of {}", display_name(*f));
}

std::string name_with_width(const Site& site, const Restriction& r, Lifted what, UnitSystem units) {
  const auto width = [units](double m) {
    return print_quantity(Quantity::length, m, units, Fineness::normal);
  };
  if (r.kind == Restriction::Kind::setback)
    return say("the {} setback of lot edge {}", width(site.lot[static_cast<std::size_t>(r.edge)].setback),
               std::to_string(r.edge + 1));
  const Feature* f = find_feature(site, r.feature_id);
  if (f == nullptr || what == Lifted::whole) return name_of(site, r, what);
  if (is_root_zone(site, *f))
    return say("the {} root zone of {}", width(root_zone_radius(site, *f)), display_name(*f));
  const double free = trench_clearance(site, *f);
  return free > 0 ? say("the {} clearance of {}", width(free), display_name(*f)) : display_name(*f);
}

}  // namespace underlawn
