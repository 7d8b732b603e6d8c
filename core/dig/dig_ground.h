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

struct DigGround {
  explicit DigGround(const Site& site);
  Region open;     // the lot without houses, septic parts, reserve field, no-dig areas, wells and trunks
  Region dear;     // drives and root zones, where spoil had better not lie
  Sight sight;     // of `open`
  Region shunned;  // root zones and ground beside house walls, where a heap gives way if it can
  Sight careful;   // of `open` without that
  bool has_lot = false;
};

// What keeps spoil off the leg: "the lot line", "Oak", "Trench 2"; empty where nothing does.
std::string blocker_of(const Site& site, const Segment& leg);

// Where machines come in: near `asked` on the lot line, else where the drive meets it (`over_drive` then
// set), else nothing.
std::optional<Point> access_of(const Site& site, const std::optional<Point>& asked, bool& over_drive);

}  // namespace underlawn
