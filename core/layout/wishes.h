// SPDX-License-Identifier: GPL-3.0-or-later
// What the designer asks of the loop.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "field/coil.h"
#include "plane/point.h"

namespace underlawn {

// A trench whose place is given: it is taken as it is.
struct GivenTrench {
  Point head, end;
  double depth = 0;               // m; 0: Wishes::trench_depth
  double coil_length = 0;         // m of pipe in it; 0: as the wishes' pitch gives for its length
  std::vector<Point> bends = {};  // of its middle line between the two, from the head on
  bool operator==(const GivenTrench&) const = default;
};

// What the best arrangement is, among those that hold the circuits asked for.
enum class Aim {
  digging,   // least digging: metres of trench, header and run, and what a crossing is worth in them
  circuits,  // as many circuits as fit, however many are asked for; then least digging
  metres,    // most metres of trench, each between least_length and most_length; then least digging
  lawn,      // least lawn torn up
  cost,      // least money: Prices without what is not bought
  trees,     // furthest from the trunks of trees
  mix,       // least money with what is not bought at the designer's own price; may leave circuits out
};

// What things cost, in the designer's own currency. Usual values: round figures of our own, no source.
struct Prices {
  std::string currency = "USD";
  double digging = 20;         // per m3 of ground dug, filled in again and compacted
  double hand_crossing = 150;  // a utility or other line met by hand
  double pavement = 90;        // per m2 cut and made good
  double lawn = 4;             // per m2 torn up and sown
  double bedding = 45;         // per m3 of sand
  double coil_pipe = 2.2;      // per m
  double header_pipe = 6;      // per m
  double joint = 30;           // a fused joint
  double crew_day = 1900;      // crew and machine standing on the lot for a day
  // Not bought, but worth avoiding, in the same money; Aim::mix only.
  double missing_circuit = 6000;  // one less than asked for
  double near_tree = 40;  // per m that the nearest trench comes within tree_distance of a trunk, each tree
  double tree_distance = 10;  // m
  bool operator==(const Prices&) const = default;
};

// A wall of the house whose outer side the owner wants left alone: no coil trench lies beyond its line.
struct ClosedSide {
  int house_id = 0;
  int wall = 0;  // index of the corner the wall starts at
  bool operator==(const ClosedSide&) const = default;
};

inline constexpr int kMostGroups = 4;

// The line that trench heads of a further group meet; of the first it is Wishes::header_on.
struct GroupHeader {
  int group = 2;  // 2..kMostGroups
  Segment on;
  bool operator==(const GroupHeader&) const = default;
};

struct Wishes {
  CoilPattern pattern = CoilPattern::flat_coil;
  std::string pipe = "3/4 in DR 11";           // name in pipe_sizes(): the coils
  std::string header_pipe = "1-1/4 in DR 11";  // header and supply run
  CoilUnknown unknown = CoilUnknown::pitch;    // which of the next three follows from the other two
  double pitch = 0.4064;                       // m
  double coil_length = 243.84;                 // m, return pipe included: 800 ft
  double trench_length = 30.48;                // m: 100 ft
  double loop_diameter = 0.9144;               // m: 3 ft
  int circuits = 4;                            // one coil each
  double trench_width = 0.9144;                // m: 3 ft
  double trench_depth = 1.8288;                // m: 6 ft
  double spacing = 3.6576;                     // m between middle lines of neighbouring trenches: 12 ft
  double end_gap = 1.8288;    // m between trenches that lie end to end, or side of one and end of another
  double run_width = 0.6096;  // m, header and run trench: 2 ft
  double run_depth = 1.5240;  // m: 5 ft
  double bedding = 0.1524;    // m of sand round the pipe: 6 in
  bool coil_in_run = true;    // use the supply trench for a coil where it is long enough
  double level_distance = 0.3048;  // m between levels of straight pipe: 1 ft
  double side_distance = 0.4572;   // m between its two sides: 18 in
  bool return_on_top = true;       // of an upright coil; else on the floor
  std::vector<GivenTrench> given;  // where there are any, no other trenches are placed
  Aim aim = Aim::digging;
  Prices prices;
  double least_length = 18.288;      // m, of a trench when the aim is metres: 60 ft
  double most_length = 45.72;        // m: 150 ft
  std::optional<double> direction;   // rad, that field trenches are held to; without it the best is sought
  int groups = 1;                    // fields of trenches, each with a header of its own
  std::vector<GivenTrench> locked;   // stay where they are; the rest is placed round them
  std::optional<Segment> header_on;  // the line that trench heads meet
  std::vector<GroupHeader> group_headers;  // one a group at most, where that group's is held
  std::vector<Point> run_by;               // places the supply run passes, from the house on
  std::vector<ClosedSide> closed;
  bool level_floor = false;   // floors of coil trenches level, trench_depth where the ground is lowest; else
                              // trench_depth below the ground all along
  std::vector<Segment> kept;  // trenches as last shown, head to end: near equals, they are not moved
  Polyline kept_run;          // the supply run as last shown, from the house on
  bool operator==(const Wishes&) const = default;
};

// Floor width usual for a pattern, m: as wide as the loops; a chain trencher's 6 in for what stands or lies
// in one plane; two sides of pipe need a bucket. Common practice, no source, but for the upright coil's 6 in:
// Handbook of Energy Management, "spiral loops".
constexpr double usual_trench_width(CoilPattern pattern) {
  if (pattern == CoilPattern::flat_coil) return 0.9144;
  return pattern == CoilPattern::upright_coil || pattern == CoilPattern::single_pipe ? 0.1524 : 0.6096;
}

}  // namespace underlawn
