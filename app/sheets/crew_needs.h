// SPDX-License-Identifier: GPL-3.0-or-later
// What the crew needs besides the drawing: who comes when, what is brought along, what is filled in, which
// fittings go where. Null where there is nothing to say.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/block.h"

namespace underlawn::sheet {

// A row for every day of the calendar: who is there from when to when.
BlockPtr who_when(const Plan& plan, const Outcome& outcome);
// Who looks, stakes, digs by hand, guards; whom to call. To be filled in by hand.
BlockPtr safety_form(const Plan& plan, const Outcome& outcome);
// Tapes, stakes, shield, goods, sand and machines that the plan knows; the forms of this job by their names.
BlockPtr bring_and_fill(const Plan& plan, const Outcome& outcome);
// Fittings of header and run as the bill counts them, with their places.
BlockPtr fittings_table(const Plan& plan, const Outcome& outcome);

// "run 2, 63°: elbow 45°, the pipe bends 18° more; …" and how tight; empty where nothing turns.
QString bend_words(const Plan& plan, const Outcome& outcome);

// The longest that a sheet asks to be taped; from and to are stakes, corners or both ends of a wall.
struct LongestTape {
  double metres = 0;
  QString from, to;
};
LongestTape longest_tape(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn::sheet
