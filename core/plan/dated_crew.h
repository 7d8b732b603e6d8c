// SPDX-License-Identifier: GPL-3.0-or-later
// The day on which digging begins is told once: to the crew, or else to the family.
#pragma once

#include "plan/plan.h"

namespace underlawn {

// The plan's crew; where nobody typed its first day, it begins on the day that the proposal names, if that is
// a date ("2026-05-18") and not words ("in the second half of May").
CrewWishes dated_crew(const Plan& plan);

}  // namespace underlawn
