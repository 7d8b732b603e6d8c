// SPDX-License-Identifier: GPL-3.0-or-later
// What the ground looks like at a moment of the calendar, as areas of the lot: no heap lies on an open
// trench, and what a neighbour's earth has filled is filled.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"
#include "plane/region.h"

namespace underlawn {

struct GroundAt {
  Region open, filled, heaps;
  Region trodden;  // all that earth, machine and feet have taken until then, under the others
};
// `at`: s of working time. Needs a calendar and an order; else all is empty.
GroundAt ground_at(const Plan& plan, const Outcome& outcome, double at);

// Everything that is dug, heaped on, driven over or kept for pipe from the first day to the last, without
// house, drives and beds: what is sown when the work is done.
Region ground_used(const Plan& plan, const Outcome& outcome);

// A part of a line from its beginning.
Polyline first_part(const Polyline& line, double share);

}  // namespace underlawn
