// SPDX-License-Identifier: GPL-3.0-or-later
// What stands, lies and is forbidden on the lot: plain data, as drawn. Nothing derived.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plane/point.h"

namespace underlawn {

enum class FeatureKind {
  house,          // area
  drive,          // area: pavement
  septic_tank,    // area
  drain_field,    // area
  reserve_field,  // area: kept free for a second drain field
  well,           // point
  tree,           // point
  utility,        // line
  easement,       // area
  no_dig,         // area: garden, patio, anything the owner wants left alone
};
inline constexpr int kFeatureKinds = 10;

enum class FeatureShape { area, line, point };
FeatureShape shape_of(FeatureKind kind);
// Kinds that header and run can be allowed to cross, by hand: utilities, drives, easements.
bool can_be_crossed(FeatureKind kind);

// The classes of the APWA colour code, which crews know.
enum class UtilityKind { electric, gas, communication, water, sewer, reclaimed };

// One side of the lot line, from its corner to the next one's.
struct LotCorner {
  Point at;
  double setback = 0;  // m, kept free along the edge that starts here
  bool operator==(const LotCorner&) const = default;
};

struct Feature {
  int id = 0;  // unique in the site, > 0, never reused within a plan's life
  FeatureKind kind = FeatureKind::no_dig;
  std::string name;                             // as the designer calls it; may be empty
  std::vector<Point> points;                    // ring, line or one point, as shape_of(kind) says
  std::optional<double> trench_clearance;       // m; without it the clearance table's value for the kind
  std::optional<double> run_clearance;          // m; the same for header and supply run
  double trunk_diameter = 0.3;                  // m, trees only
  UtilityKind utility = UtilityKind::electric;  // utilities only
  double depth = 0.6;                           // m to the top of the line, utilities only
  bool may_cross = true;  // utilities, drives, easements: header and run may cross it; coil trenches never do
  std::string note;
  bool operator==(const Feature&) const = default;
};

// Where the supply run enters the house.
struct EntryPoint {
  int house_id = 0;
  Point at;  // on the house's outline (within kEntryReach of it)
  bool operator==(const EntryPoint&) const = default;
};
inline constexpr double kEntryReach = 0.3;  // m

// The designer's own clearance for a kind, where it differs from the table's.
struct ClearanceRule {
  FeatureKind kind = FeatureKind::no_dig;
  double trench = 0;  // m from the edge of a coil trench
  double run = 0;     // m from the edge of the header or run trench
  bool operator==(const ClearanceRule&) const = default;
};

// Height of the ground at a point, over any level the whole survey is measured from (a bench mark).
struct SpotHeight {
  Point at;
  double height = 0;  // m
  bool operator==(const SpotHeight&) const = default;
};

inline constexpr double kOneHeight = 0.01;  // m: spot heights nearer than this are one
inline constexpr double kHighest = 10000;   // m, above or below
inline constexpr std::size_t kMostHeights = 20000;

struct Site {
  std::vector<LotCorner> lot;     // ring of corners, either winding, empty while none is drawn
  std::vector<Feature> features;  // ids rising
  std::optional<EntryPoint> entry;
  double north = 1.5707963267948966;  // rad from +x: the drawing direction that points north
  double root_zone_factor = 18;       // radius of the root zone per trunk diameter (18 = 1.5 ft per inch)
  std::vector<ClearanceRule> rules;   // by kind, at most one each
  std::vector<SpotHeight> heights;    // none: the ground is taken for level; no two at one place
  bool operator==(const Site&) const = default;
};

const Feature* find_feature(const Site& site, int id);
bool crossable(const Feature& f);            // its kind can be crossed, and it may
Ring lot_ring(const Site& site);             // corners only
std::string display_name(const Feature& f);  // its name, or its kind with its id: "Tree 7"
std::string kind_name(FeatureKind kind);     // "drain field"
std::string utility_name(UtilityKind kind);  // "electric"
// The same in English whatever is spoken, for files.
std::string_view kind_key(FeatureKind kind);
std::string_view utility_key(UtilityKind kind);

}  // namespace underlawn
