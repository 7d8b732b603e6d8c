// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/blocked_way.h"

#include <algorithm>

#include "base/say.h"
#include "layout/zones.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

Arrangement arrangement_of(const std::vector<Trench>& trenches) {
  Arrangement a;
  for (const Trench& t : trenches)
    if (t.role == TrenchRole::field) {
      a.trenches.push_back({t.head, t.end});
      a.bends.push_back(t.bends);
    }
  return a;
}

bool reaches(const Site& site, const Wishes& wishes, const Region& bands, const Arrangement& a) {
  const auto routable = routable_region(site, bands);
  return routable && way_exists(unpriced_conduits(site, wishes, *routable), a);
}

// Beside the wall at the entry point, the house itself left out.
std::string what_lies_at_entry(Site site, const Wishes& w) {
  const Feature* house = find_feature(site, site.entry->house_id);
  if (house == nullptr) return {};
  const Ring walls = house->points;
  const double beside = run_clearance(site, *house) + w.run_width / 2 + 0.01;
  std::erase_if(site.features, [id = house->id](const Feature& f) { return f.id == id; });
  std::vector<std::string> names;
  for (int i = 0; i < 16; ++i) {
    const Point p = site.entry->at + beside * direction(i * std::numbers::pi / 8);
    if (contains(walls, p)) continue;
    const std::string here = what_lies_at(site, w, p);
    if (!here.empty() && std::find(names.begin(), names.end(), here) == names.end()) names.push_back(here);
  }
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : "; ") + name;
  return all;
}

}  // namespace

std::string what_lies_at(const Site& site, const Wishes& w, Point p) {
  std::string names;
  const auto add = [&](const std::string& name) { names += (names.empty() ? "" : ", ") + name; };
  const Ring lot = lot_ring(site);
  if (!contains(lot, p)) add(say("outside the lot"));
  for (std::size_t i = 0; i < lot.size(); ++i)
    if (distance(Segment{lot[i], lot[(i + 1) % lot.size()]}, p) < site.lot[i].setback + w.run_width / 2)
      add(say("the setback of lot edge {}", std::to_string(i + 1)));
  for (const Feature& f : site.features) {
    if (crossable(f)) continue;
    const double away = shape_of(f.kind) == FeatureShape::area ? distance(f.points, p)
                        : f.points.size() == 1                 ? distance(f.points.front(), p)
                                                               : line_distance({p, p}, f.points);
    if (away < run_clearance(site, f) + w.run_width / 2) add(display_name(f));
  }
  return names;
}

Trouble no_way(const Site& site, const Wishes& wishes, const Conduits& conduits,
               const std::vector<Trench>& trenches) {
  std::string closers;
  Site closed = site;  // without what closes nothing
  std::erase_if(closed.features, crossable);
  const Region bands = setback_bands(site);
  const Arrangement placed = arrangement_of(trenches);
  for (const Feature& f : closed.features) {
    if (f.id == site.entry->house_id) continue;
    Site open = closed;
    std::erase_if(open.features, [&](const Feature& other) { return other.id == f.id; });
    if (reaches(open, wishes, bands, placed)) closers += (closers.empty() ? "" : ", ") + display_name(f);
  }
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    if (!(site.lot[i].setback > 0)) continue;
    Site open = closed;
    open.lot[i].setback = 0;
    if (reaches(open, wishes, setback_bands(open), placed))
      closers += (closers.empty() ? "" : ", ") + say_as("what closes a way", "setback of lot edge {}", i + 1);
  }
  const bool walled_in = conduits.stubs.empty();
  Trouble t{"no_way_to_house", say("way for the supply run"), say_as("a way", "none"),
            say("from the entry point to the trenches"), ""};
  if (!closers.empty() && walled_in)
    t.advice = say(
        "Any one of these closes the entry point in: {}. Move the entry point to another wall, lessen the "
        "clearance or allow crossing it.",
        closers);
  else if (!closers.empty())
    t.advice =
        say("Any one of these closes it: {}. Move it, lessen its clearance or allow crossing it.", closers);
  else if (walled_in) {
    const std::string beside = what_lies_at_entry(site, wishes);
    t.advice = beside.empty()
                   ? say("The entry point is closed in: move it to another wall.")
                   : say("The entry point is closed in (beside it: {}): move it to another wall.", beside);
  } else
    t.advice = say("More than one thing closes it: move the entry point or what lies between.");
  return t;
}

}  // namespace underlawn
