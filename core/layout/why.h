// SPDX-License-Identifier: GPL-3.0-or-later
// Why no trench lies at some place, and what it costs that one thing keeps digging out.
#pragma once

#include <stop_token>

#include "base/quantity.h"
#include "layout/lifted.h"

namespace underlawn {

// One thing that keeps a trench from a place.
struct Reason {
  enum class Kind {
    outside,       // the place is off the lot
    covered,       // it lies in a setback, in a clearance, on a feature or beyond a closed wall
    stops_trench,  // it ends the longest trench through the place
    too_near,      // the pair rule against a trench that lies there
    header,        // a trench would lie across it
    run,
    no_header,  // a trench would fit; no header can reach either of its ends
    enough,     // a trench would fit; as many as were asked for are placed
    not_used,   // a trench would fit beside the others; the search found no whole arrangement with it
  } kind = Kind::outside;
  Restriction restriction;  // covered and stops_trench, unless it is a closed side
  int closed_side = -1;     // index of Wishes::closed: that instead of a restriction
  bool on_it = false;       // the place lies on the thing itself, not in its clearance alone; on the trench,
                            // the header, the run
  int trench = 0;           // number, too_near
  double short_by = 0;  // m: covered: from the place to where a trench's edge may lie; stops_trench: that the
                        // longest trench lacks, 0 where none at all can lie over the place; too_near: that
                        // the pair rule lacks
  double direction = 0;  // rad, stops_trench: of that trench
  bool operator==(const Reason&) const = default;
};

struct WhyEmpty {
  std::vector<Reason> reasons;   // all of them keep it out; what binds most comes first
  double longest_along = 0;      // m, of a trench through the place in the direction of the field
  double longest = 0;            // m, in any direction
  double longest_direction = 0;  // rad
};

// What would have to go so that a trench of the coil's length may lie over this place: of all such trenches
// (5 degrees apart, the layout's own direction first) that with the least in its way, and everything that is.
// Header and run are the least, as they are laid anew with every trench; then trenches of the layout, a
// no-dig area or closed side, setbacks and clearances, and last what cannot be moved. Header that only leads
// to trenches in the way goes with them. Setbacks and clearances come first in the answer, by how far they
// are short. Takes a few milliseconds.
WhyEmpty what_keeps_out(const Site& site, const Wishes& wishes, const Coil& coil, const Layout& layout,
                        Point at);

// What keeps out: as a restriction is named, the thing itself where the place lies on it, or "the closed side
// at wall 1 of House 1".
std::string name_of(const Site& site, const Wishes& wishes, const Reason& reason);
// The same with how wide it is, as name_with_width has it.
std::string name_with_width(const Site& site, const Wishes& wishes, const Reason& reason, UnitSystem units);

inline constexpr double kWorthDigging = 0.5;  // m less to dig than this is no gain

// The layout with a restriction, and without what of it can be taken away: of several such things the least
// one that no greater betters.
struct RestrictionPrice {
  std::optional<Lifted> lifted;  // what was taken away; none: nothing can be, and there is no price
  int circuits = 0, circuits_without = 0;
  double digging = 0, digging_without = 0;  // m of coil trench, header and run
  int costs_circuits() const { return circuits_without - circuits; }
  double costs_digging() const { return digging - digging_without; }  // m, of as many circuits
};
// Refuses an edge or feature that is not there. Takes two or three whole layouts; asked to stop, what it
// gives is to be thrown away.
Result<RestrictionPrice> cost_of(const Site& site, const Wishes& wishes, const Coil& coil,
                                 const Restriction& restriction, std::stop_token stop = {});
// The same of several restrictions of one layout, made once.
Result<RestrictionPrice> cost_of(const Site& site, const Wishes& wishes, const Coil& coil, const Layout& with,
                                 const Restriction& restriction, std::stop_token stop = {});

}  // namespace underlawn
