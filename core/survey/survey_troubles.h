// SPDX-License-Identifier: GPL-3.0-or-later
// Values of the survey that cannot be drawn, each with its bound. They stop no solve.
#pragma once

#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "survey/survey.h"

namespace underlawn {

inline constexpr double kLeastChordTolerance = 1e-4;  // m
inline constexpr double kMostChordTolerance = 1;      // m
inline constexpr double kMostSighted = 1e8;           // m, of distances and grid coordinates

std::vector<Trouble> survey_troubles(const Survey& survey, UnitSystem units);

}  // namespace underlawn
