// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/quantity.h"
#include "base/result.h"
#include "cost/pricing.h"

namespace underlawn {

inline constexpr std::size_t kMostPriceRows = 1000;
inline constexpr std::size_t kMostOwnLines = 200;  // and incentives
inline constexpr std::size_t kMostSystems = 20;
inline constexpr int kMostYears = 100;

// What is out of bounds, each once, named as the designer sees it.
std::vector<Trouble> pricing_troubles(const Pricing& pricing, UnitSystem units);

}  // namespace underlawn
