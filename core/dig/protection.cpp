// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/protection.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "dig/dig.h"

namespace underlawn {

namespace {

constexpr double kHair = 1e-9;
constexpr const char* kSystem = "29 CFR 1926.652(a)(1)";

SidesChoice stay_out(bool due) {
  return {Sides::stay_out, 0, true,
          due ? say("Vertical sides and nobody goes in: pipe is let down from above.")
              : say("Vertical sides; the trench is entered only after a competent person found no sign of "
                    "cave-in."),
          kSystem};
}

SidesChoice laid_back(SoilType soil, bool engineer) {
  return {Sides::slope, slope_for(soil), !engineer,
          engineer ? say("20 ft (6.1 m) and deeper: a registered professional engineer designs the slope.")
                   : say("Sides laid back from the floor up."),
          say("29 CFR 1926 Subpart P, Table B-1")};
}

std::string held_words(Sides sides) {
  if (sides == Sides::shield)
    return say(
        "A shield rated for the depth and soil, 18 in (0.46 m) above the vertical part; people only "
        "inside it.");
  return say("Shores or hydraulic shores by the maker's table; set and taken out from above.");
}

SidesChoice held(Sides sides, bool engineer) {
  const std::string words = held_words(sides);
  return {sides, 0, true,
          engineer ? say("{} 20 ft (6.1 m) and deeper: by an engineer's design.", words) : words,
          sides == Sides::shield ? "29 CFR 1926.652(g)" : "29 CFR 1926.652(c)"};
}

}  // namespace

bool protection_due(SoilType soil, double depth) {
  return soil != SoilType::stable_rock && depth >= kProtectFrom - kHair;
}

std::string sides_name(Sides sides) {
  switch (sides) {
    case Sides::stay_out:
      return say("vertical, nobody goes in");
    case Sides::slope:
      return say("laid back");
    case Sides::shield:
      return say("trench shield");
    case Sides::shoring:
      return say("shored");
  }
  return "";
}

std::vector<SidesChoice> sides_choices(SoilType soil, double depth) {
  const bool due = protection_due(soil, depth), engineer = depth > kEngineerFrom + kHair;
  return {stay_out(due), laid_back(soil, engineer), held(Sides::shield, engineer),
          held(Sides::shoring, engineer)};
}

double least_slope(SoilType soil, double depth, double open) {
  const bool short_term = open > 0 && open <= kShortTermOpen && depth <= kShortTermDepth + kHair;
  if (soil == SoilType::type_a && short_term) return kShortTermSlope;
  return slope_for(soil);
}

std::vector<double> ladder_places(double length, double depth) {
  std::vector<double> places;
  if (!(length > 0) || !(depth >= kLadderFrom - kHair)) return places;
  const int n = std::max(1, static_cast<int>(std::ceil(length / (2 * kLadderReach) - kHair)));
  for (int i = 0; i < n; ++i) places.push_back(length * (2 * i + 1) / (2 * n));
  return places;
}

}  // namespace underlawn
