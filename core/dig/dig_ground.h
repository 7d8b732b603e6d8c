// SPDX-License-Identifier: GPL-3.0-or-later
// The lot as spoil and machines meet it.
#pragma once

#include <string>

#include "plane/region.h"
#include "plane/sight.h"
#include "site/site.h"

namespace underlawn {

// Kept free of spoil and machines round what is drawn as a point. m; our own choice, no source.
inline constexpr double kWellKept = 1.5;
inline constexpr double kTrunkKept = 0.3;  // from the bark
// m that spoil keeps off a house wall where it can; our own choice, no source.
inline constexpr double kSpoilOffWall = 0.6;
// Beside wheels and tracks where there is room. m; common practice, no source.
inline constexpr double kDriveOffWall = 0.6;
// The same from a septic tank and a drain field, that neither lid nor pipes are broken: no wheel goes on them
// by common practice, how far off it keeps has no source.
inline constexpr double kDriveOffSeptic = 1.5;

struct DigGround {
  explicit DigGround(const Site& site);
  Region open;  // the lot without houses, septic parts, reserve field, no-dig areas, wells and trunks
  Region dear;  // drives and root zones, where spoil had better not lie
  Sight sight;  // of `open`
  // Where a heap gives way if it can: root zones and ground beside house walls; over buried lines, as wide as
  // their tolerance zone, that their marks stay in sight; both. And `open` without each.
  Region roots_and_walls, lines, shunned;
  Sight off_roots_and_walls, off_lines, careful;
  struct Beside {
    Region area;
    double off;  // m, driven_off of it
  };
  std::vector<Beside> beside;  // walls, tanks and drain fields
  bool has_lot = false;
};

// m that machines and trucks keep off it beside their width, where there is room; 0 for other kinds.
double driven_off(const Feature& f);

// What keeps spoil off the leg: "the lot line", "Oak", "Trench 2"; empty where nothing does.
std::string blocker_of(const Site& site, const Segment& leg);

// Where machines come in: near `asked` on the lot line, else where the drive meets it (`over_drive` then
// set), else nothing.
std::optional<Point> access_of(const Site& site, const std::optional<Point>& asked, bool& over_drive);

}  // namespace underlawn
