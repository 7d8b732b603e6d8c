// SPDX-License-Identifier: GPL-3.0-or-later
// The machine's ways over the lot: from the street to the first trench, from trench to trench, out again.
#pragma once

#include "dig/dig_ground.h"
#include "dig/dig_order.h"
#include "dig/room_beside.h"

namespace underlawn {

// Air at each side of the machine. m; our own choice, no source.
inline constexpr double kBesideMachine = 0.15;
// m over the wheels of a truck, the widest allowed on the roads of the United States, 102 in: 23 CFR 658.15
// (from memory).
inline constexpr double kTruckWidth = 2.591;

// What drives over the lot where.
struct Drive {
  const Polyline* way = nullptr;  // of its middle; never empty
  double width = 0;               // m over its tracks or wheels
};
// Of all steps and out again: the machine to where each begins, the trucks that take spoil off and bring it
// back. The order has to stay alive.
std::vector<Drive> drives_of(const DigOrder& order, const Machine& excavator);

class MachineWays {
 public:
  MachineWays(const DigGround& ground, const Machine& machine, double off);

  struct Standing {
    std::vector<Ring> trenches, heaps;
  };
  // Where the machine may stand as it begins at the front of `line`, best first: on the line, as far back as
  // the bucket still reaches. Where it stands when it has dug to the back of it: beyond its end, or beside
  // its end on the side away from the spoil (1 left, -1 right of the line; 0 either), off what stands then.
  std::vector<Point> stands_to_begin(const Polyline& line) const;
  std::optional<Point> stand_at_end(const DigStep& step, const Polyline& line, int away,
                                    const Standing& standing) const;

  // To the first of the places that can be come to, keeping off trenches open and heaps standing all the way;
  // empty where there is none. It keeps kDriveOffWall and kDriveOffSeptic beside the machine's width where
  // any way does, else as much of them as leaves one.
  Polyline way(Point from, const std::vector<Point>& places, const Standing& standing) const;
  // To whichever of the places is the nearest by the way; those that are not free are left out.
  Polyline shortest_way(Point from, const std::vector<Point>& places, const Standing& standing) const;

 private:
  using Ends = std::vector<Point>;
  struct Free {
    Region region;
    bool wide;  // keeps off walls: no place beside another, no start that cannot be come to
  };
  // From the widest ground on.
  template <class Try>
  Polyline first_of(Point from, const Ends& places, const Standing& standing, Try way_on) const;
  Polyline first_way(Point from, const Ends& places, const Standing& standing, const Free& free) const;
  Polyline nearest_way(Point from, const Ends& places, const Standing& standing, const Free& free) const;
  std::optional<Point> start_of(Point from, const Sight& free, bool wide) const;
  bool clear(Point from, Point to, const Standing& standing) const;
  bool off(Point from, Point to, const Standing& standing) const;
  Region taken(const Standing& standing) const;
  Polyline from_street(Point from, Polyline line, const Standing& standing) const;
  double half_;  // m of the machine's width, with air
  double off_;
  double reach_;
  Region ground_;  // where the machine's middle may be
  Sight sight_;
  RoomBeside room_;
  mutable std::optional<Sight> wide_;  // of what keeps all off walls, tanks and fields; made when asked for
};

}  // namespace underlawn
