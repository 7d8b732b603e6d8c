// SPDX-License-Identifier: GPL-3.0-or-later
// How the sides of a trench may stand, by soil class and depth: 29 CFR 1926 Subpart P. Local codes govern
// where they are stricter; a competent person decides on the lot.
#pragma once

#include <string>
#include <vector>

#include "dig/dig_wishes.h"
#include "ground/ground.h"

namespace underlawn {

inline constexpr double kEngineerFrom = 6.096;     // m: 20 ft, Table B-1, note 3
inline constexpr double kLadderFrom = 1.2192;      // m: 4 ft, 1926.651(c)(2)
inline constexpr double kLadderReach = 7.62;       // m: 25 ft of lateral travel, 1926.651(c)(2)
inline constexpr double kShortTermDepth = 3.6576;  // m: 12 ft, Type A open no longer than
inline constexpr double kShortTermOpen = 86400;    // s: 24 h
inline constexpr double kShortTermSlope = 0.5;     // 1/2:1 (Appendix B)

// Whether 1926.652(a)(1) asks for a protective system where somebody is in the trench.
bool protection_due(SoilType soil, double depth);
// Whether people go into a trench held so.
constexpr bool is_entered(Sides sides) {
  return sides != Sides::stay_out;
}

std::string sides_name(Sides sides);  // "trench shield"

// One way to hold the sides at a soil class and depth.
struct SidesChoice {
  Sides sides = Sides::stay_out;
  double slope = 0;     // horizontal per vertical; 0: vertical
  bool allowed = true;  // federal minimum
  std::string words;    // what it means here
  std::string source;
};
std::vector<SidesChoice> sides_choices(SoilType soil, double depth);  // in the order of Sides

// Least slope that the table allows: of Table B-1; of Type A half of a unit where the trench is no deeper
// than kShortTermDepth and open no longer than kShortTermOpen (`open`: s, none where it is not known).
double least_slope(SoilType soil, double depth, double open);

// Places along a trench of this length for a ladder each, m from its start, so that from everywhere one is
// within kLadderReach. None below kLadderFrom of depth.
std::vector<double> ladder_places(double length, double depth);

}  // namespace underlawn
