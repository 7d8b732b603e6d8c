// SPDX-License-Identifier: GPL-3.0-or-later
// A lot with as much of one restriction taken away as can be, to see what the restriction costs.
#pragma once

#include <string>
#include <vector>

#include "base/quantity.h"
#include "layout/layout.h"

namespace underlawn {

enum class Lifted { setback, clearance, whole };

struct LiftedSite {
  Lifted what = Lifted::setback;
  Site site;
};

// What can be taken away, the least first: an edge's setback; a feature's clearance, of a tree down to its
// bark; a no-dig area as a whole, which is the owner's own wish. What stands or lies on the lot stays, and so
// does an easement, which is another's right. None where nothing can go, or there is no such restriction.
std::vector<LiftedSite> liftings(const Site& site, const Restriction& restriction);

// The most that can be taken away; `clearance` where nothing can.
Lifted most_lifted(const Site& site, const Restriction& restriction);

// "the setback of lot edge 2", "the clearance of Septic tank 3", "the root zone of Oak"; whole: "Garden 4"
std::string name_of(const Site& site, const Restriction& restriction);
std::string name_of(const Site& site, const Restriction& restriction, Lifted what);
// "the 25'-0\" clearance of Septic tank 3"; what keeps nothing free about it is named itself.
std::string name_with_width(const Site& site, const Restriction& restriction, Lifted what, UnitSystem units);

constexpr Lifted usual_lifting(const Restriction& restriction) {
  return restriction.kind == Restriction::Kind::setback ? Lifted::setback : Lifted::clearance;
}

}  // namespace underlawn
