// SPDX-License-Identifier: GPL-3.0-or-later
// What pressure a polyethylene pipe may carry.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

enum class PeMaterial { pe4710, pe3408 };
// Pa: hydrostatic design stress in water at 23 C, 1000 and 800 psi: PPI TR-4, by makers' printed ratings.
double design_stress(PeMaterial material);

// Share of the rating left at `temperature` (deg C) of the pipe: PPI TR-9 and Handbook (from memory), the
// lower where prints differ, straight between the points; 1 at 23 C and below (no more is claimed for cold
// pipe). Refused below -40 C and above 60 C, where the tables end.
Result<double> temperature_factor(double temperature);

// Pa gauge, lasting: 2 HDS F_T/(DR - 1), ASTM F714. Refused: a ratio outside 4..41, temperature_factor's.
Result<double> pressure_rating(PeMaterial material, double dr, double temperature);

struct RatedPart {
  std::string name;
  double rating = 0;  // Pa gauge at its temperature, > 0
};
// The first of the lowest rating. Refused: no parts, a rating that is not more than 0.
Result<RatedPart> weakest_part(const std::vector<RatedPart>& parts);

}  // namespace underlawn
