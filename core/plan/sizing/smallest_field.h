// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/sizing/field_trials.h"

namespace underlawn {

struct SmallestField {
  std::optional<FieldSize> size;   // holds both limits; one circuit fewer does not
  std::optional<FieldSize> given;  // where size is not placed: as many as the lot takes
};

// Begins with the number open ground asks for, and goes up or down from there on the lot. A lot that takes
// fewer than hold gives the number of open ground and what the lot takes.
SmallestField smallest_field(FieldTrials& trials, const ThermalWishes& limits, const std::stop_token& stop);

// Least pipe in each of the plan's own trenches, to 0.5 m; refused where even the closest pitch is too little
// or where the loop cannot be laid.
Result<double> least_coil_length(FieldTrials& trials, const Plan& plan, const Coil& drawn,
                                 const std::stop_token& stop);

// The coil that the wishes ask for.
Result<Coil> coil_of(const Wishes& wishes, UnitSystem units);

}  // namespace underlawn
