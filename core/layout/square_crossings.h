// SPDX-License-Identifier: GPL-3.0-or-later
// A line of header or run that meets a utility at a slant, bent so that it passes it at right angles.
#pragma once

#include "layout/connect.h"
#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn {

inline constexpr double kSlant = 0.7854;    // rad: 45 degrees; flatter than this a crossing is worth a detour
inline constexpr double kSquareDetour = 4;  // m of plain digging that it is worth
inline constexpr double kSquareHalf = 1;    // m, of the stretch at right angles, to each side of the utility

// Digging by hand grows with 1/sin of the angle, kHandDig m of plain digging a metre through the utility's
// ground. A leg that crosses one utility gets two bends and a stretch at right angles to it where that is
// cheaper (each bend at kBend), or where the crossing is flatter than kSlant and the way at most
// kSquareDetour longer; and where `legal` says so. A slant where nothing else may be stays.
inline constexpr double kHandDig = 3;
template <class Legal>
Polyline with_square_crossings(const Site& site, const Wishes& wishes, const Polyline& line,
                               const Legal& legal);

// The line with its leg `leg` (from 0) bent to pass the utility's stretch at right angles in the shortest
// way, and how much cheaper it is then; no points where the leg does not cross it or there is no room.
struct SquareCrossing {
  Polyline line;
  double saved = 0;   // m of plain digging; may be negative
  double angle = 0;   // rad, of the crossing before
  double longer = 0;  // m
};
SquareCrossing squared(const Polyline& line, std::size_t leg, const Segment& utility, const Wishes& wishes);

template <class Legal>
Polyline with_square_crossings(const Site& site, const Wishes& wishes, const Polyline& line,
                               const Legal& legal) {
  Polyline out = line;
  for (const Feature& f : site.features) {
    if (f.kind != FeatureKind::utility) continue;
    for (std::size_t j = 1; j < f.points.size(); ++j)
      for (std::size_t leg = 0; leg + 1 < out.size(); ++leg) {
        const SquareCrossing s = squared(out, leg, {f.points[j - 1], f.points[j]}, wishes);
        const bool flat = s.angle < kSlant && s.longer <= kSquareDetour;
        if (s.line.empty() || !(s.saved > 0 || flat) || !legal(s.line)) continue;
        out = s.line;
        leg += 2;
      }
  }
  return out;
}

}  // namespace underlawn
