// SPDX-License-Identifier: GPL-3.0-or-later
// Nothing of the plan is clipped in silence: what lies outside the frame is named.
#pragma once

#include "canvas/view.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn::sheet {

// All that is drawn, without labels: lot, features with their root zones, trenches, header, run.
Box drawn_box(const Plan& plan, const Outcome& outcome);
// What the crew cannot do without: house corners, trenches, header and run. Nothing where there is none.
std::optional<Box> dig_box(const Plan& plan, const Outcome& outcome);

// Names of the things of which some part is outside the view, in the order they matter to a crew.
std::vector<std::string> off_page(const Plan& plan, const Outcome& outcome, const View& view);

}  // namespace underlawn::sheet
