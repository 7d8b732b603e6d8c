// SPDX-License-Identifier: GPL-3.0-or-later
// What gets dug and laid: coil trenches, the header that joins their heads, and the supply run to the house.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "field/coil.h"
#include "plane/point.h"

namespace underlawn {

enum class TrenchRole { field, supply };  // supply: the coil lies in the trench of the supply run

struct Trench {
  int number = 0;  // 1.. in digging order along the header
  TrenchRole role = TrenchRole::field;
  Point head, end;   // of its middle line; pipe enters and leaves at the head
  double width = 0;  // m, at the floor
  double depth = 0;  // m, ground to floor, mean of head and end
  Coil coil;
  std::vector<Point> bends = {};  // of the middle line, from head to end
  bool locked = false;            // the designer holds it where it is
  double fall = 0;                // m that it was dug deeper at the end than at the head, evenly between
  bool operator==(const Trench&) const = default;
};

Polyline middle_line(const Trench& trench);  // head, bends, end
double length_of(const Trench& trench);      // m along it
Ring floor_of(const Trench& trench);         // its outline: strip_along the middle line

// A drawing in trench coordinates (x along the middle line from the head, y to the left of it; coil_path,
// straight_path) on the lot. Near a bend what lies across the line swings over from one leg to the other.
Polyline on_lot(const Trench& trench, const Polyline& in_trench);

enum class Conduit { header, run };

// Where header or run passes over or under a utility or another thing that must be met by hand.
struct Crossing {
  int feature_id = 0;
  Conduit conduit = Conduit::run;
  Point at;
  double angle = 0;          // rad between the two lines, 0..pi/2
  double utility_depth = 0;  // m to its top
  double trench_depth = 0;   // m, ours
  double hand_dig = 0;       // m to each side of `at` along our trench that is dug by hand
  bool operator==(const Crossing&) const = default;
};

// The pipes that lead from the entry point to every trench head.
struct Header {
  std::vector<Polyline>
      legs;           // each starts on the supply run's end or on an earlier leg, and passes trench heads
  double length = 0;  // m of trench
  std::vector<double> depths = {};  // m, ground to floor, by leg as dug; empty: as wished
  bool operator==(const Header&) const = default;
};
// m; `wished` where nothing was measured.
double depth_of_leg(const Header& header, std::size_t leg, double wished);

struct SupplyRun {
  Polyline line;                     // from the entry point to the header
  double length = 0;                 // m of trench
  std::optional<double> depth = {};  // m, ground to floor as dug; none: as wished
  bool operator==(const SupplyRun&) const = default;
};

}  // namespace underlawn
