// SPDX-License-Identifier: GPL-3.0-or-later
// What the same loop would cost were the sides of every trench laid back, as ground or inspector may ask.
#pragma once

#include <optional>

#include "cost/bill.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

struct LaidBack {
  Bill bill;
  int rain_days = 0;  // kept in reserve by the crew's calendar
};

// Dug, scheduled and billed again. None where all sides are laid back already, or there is no bill.
std::optional<LaidBack> bill_if_laid_back(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
