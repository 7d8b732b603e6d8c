// SPDX-License-Identifier: GPL-3.0-or-later
// The scale of a view as a person types it: "1:200", "200", "1 in = 20 ft", "1 cm = 2 m".
#pragma once

#include <QString>
#include <string_view>

#include "base/quantity.h"
#include "base/result.h"

namespace underlawn {

inline constexpr double kLeastScale = 1, kMostScale = 100'000;

// The 240 of 1:240. Refuses what cannot be read and what is not from kLeastScale to kMostScale.
Result<double> typed_scale(std::string_view text, UnitSystem system);
QString scale_text(double scale);  // "1:240"

}  // namespace underlawn
