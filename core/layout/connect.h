// SPDX-License-Identifier: GPL-3.0-or-later
// Header and supply run: from the wall of the house to every trench head.
#pragma once

#include <limits>
#include <optional>

#include "layout/arrangement.h"
#include "plane/route.h"

namespace underlawn {

// Ground for the middle line of header and run, with what it costs to cross.
struct Conduits {
  Region free;  // middle lines, before any trench lies in it
  ReadyDear dear;
  std::optional<Point> entry;   // on the wall
  std::vector<Polyline> stubs;  // ways out of the wall to free ground, best first; empty: walled in
  double width = 0;             // m
  double spacing = 0;           // m between coil trenches
  double keep = 0;              // m from the middle line of a coil trench to that of a conduit
};

// What a bend is worth avoiding.
inline constexpr double kBend = 1;  // m of plain digging

Conduits conduits_for(const Site& site, const Wishes& wishes, const Region& routable);
// The same without what anything costs: whether there is a way at all.
Conduits unpriced_conduits(const Site& site, const Wishes& wishes, const Region& routable);

struct Connection {
  Header header;
  SupplyRun run;
  double cost = 0;      // m of plain digging
  double run_cost = 0;  // of that, the run's
  int joined = 0;       // heads reached
};

// The part of a coil trench that no conduit may come near: all of it but half a header trench's width at the
// head, where the header trench itself digs it away.
Ring coil_keepout(const Segment& trench, const Conduits& c);
Ring coil_keepout(const Polyline& trench, const Conduits& c);

// Joins every head, and the house where there is a way. Without a way to the house the run is empty and the
// header is drawn among the heads. Both given stay alive as long as it.
class Joiner {
 public:
  Joiner(const Conduits& conduits, const Arrangement& arrangement);
  ~Joiner();
  // `joint`: where on a straight header the run must end, 0..1; without it the cheapest place. `shift`: the
  // run's bends too where that makes it cheaper, which takes as long as many joins. `at_most`: no run whose
  // way costs more, m of plain digging.
  Connection join(std::optional<double> joint = std::nullopt, bool shift = false,
                  double at_most = std::numeric_limits<double>::infinity());
  // The same by the run last shown, to where its end is nearest on a straight header or to the head nearest;
  // the run is empty where it is none of these ways, or no way reaches that far.
  Connection join_by(const Polyline& kept);
  // A run that lies already, its bends after the stub shifted in the same way; ends stay.
  Polyline with_run_shifted(const Polyline& run);
  double cost(const Polyline& line) const;  // m of plain digging, as join() counts it

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

// Outlines of ground that no way from the house leads to, before any trench lies in it.
std::vector<Ring> out_of_reach(const Conduits& conduits);

// Whether the house can be reached from any head.
bool way_exists(const Conduits& conduits, const Arrangement& arrangement);

}  // namespace underlawn
