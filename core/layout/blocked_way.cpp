// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/blocked_way.h"

#include "layout/zones.h"

namespace underlawn {

namespace {

bool reaches(const Site& site, const Wishes& wishes, const std::vector<Trench>& trenches) {
  auto routable = routable_region(site);
  if (!routable) return false;
  const Conduits c = conduits_for(site, wishes, *routable);
  Arrangement a;
  for (const Trench& t : trenches)
    if (t.role == TrenchRole::field) {
      a.trenches.push_back({t.head, t.end});
      a.bends.push_back(t.bends);
    }
  return way_exists(c, a);
}

}  // namespace

Trouble no_way(const Site& site, const Wishes& wishes, const Conduits& conduits,
               const std::vector<Trench>& trenches) {
  std::string closers;
  for (const Feature& f : site.features) {
    if (crossable(f) || f.id == site.entry->house_id) continue;
    Site open = site;
    std::erase_if(open.features, [&](const Feature& other) { return other.id == f.id; });
    if (reaches(open, wishes, trenches)) closers += (closers.empty() ? "" : ", ") + display_name(f);
  }
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    if (!(site.lot[i].setback > 0)) continue;
    Site open = site;
    open.lot[i].setback = 0;
    if (reaches(open, wishes, trenches))
      closers += (closers.empty() ? "" : ", ") + std::string("setback of lot edge ") + std::to_string(i + 1);
  }
  const bool walled_in = conduits.stubs.empty();
  Trouble t{"no_way_to_house", "way for the supply run", "none", "from the entry point to the trenches", ""};
  if (!closers.empty())
    t.advice =
        "Any one of these closes it: " + closers + ". Move it, lessen its clearance or allow crossing it.";
  else
    t.advice = walled_in ? "The entry point is closed in: move it to another wall."
                         : "More than one thing closes it: move the entry point or what lies between.";
  return t;
}

}  // namespace underlawn
