// SPDX-License-Identifier: GPL-3.0-or-later
// How cold the fluid gets, that the antifreeze has to bear: one answer for every page that asks.
#pragma once

#include <memory>
#include <optional>

#include "flow/hydraulics.h"
#include "thermal/temperatures.h"

namespace underlawn {

// deg C: the coldest fluid that leaves the heat pump in the years kept hour by hour; none where nothing was
// simulated. `temperatures` may be null.
std::optional<double> coldest_simulated(const Temperatures* temperatures);

// deg C: the colder of what was typed and what was simulated.
double coldest_fluid(const FlowWishes& wishes, const Temperatures* temperatures);

// `flow` with its antifreeze reckoned for coldest_fluid instead of what was typed; null stays null.
std::shared_ptr<const Flow> protected_flow(std::shared_ptr<const Flow> flow, const FlowWishes& wishes,
                                           const Temperatures* temperatures);

}  // namespace underlawn
