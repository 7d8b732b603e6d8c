// SPDX-License-Identifier: GPL-3.0-or-later
// Taking hold of a trench that was placed: from then on it is locked where it is put, and the rest is
// arranged round it.
#pragma once

#include <QString>
#include <optional>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

struct TrenchHold {
  enum class Part { whole, head, end } part = Part::whole;
  GivenTrench trench;                 // as it lay when taken hold of
  std::optional<std::size_t> locked;  // its place in Wishes::locked
};

const Trench* trench_numbered(const Layout& layout, int number);  // null where there is none

// The locked trench that a placed one is; none where it is not locked.
std::optional<std::size_t> locked_index(const Plan& plan, const Trench& trench);

// By one of its ends where that is within `reach` m of `at`, else as a whole. Nothing for the coil in the run
// and for a trench whose place is given.
std::optional<TrenchHold> hold_trench(const Plan& plan, const Outcome& outcome, int number, Point at,
                                      double reach);

// A locked trench as a whole, by its place in Wishes::locked. Nothing where there is none.
std::optional<TrenchHold> hold_locked(const Plan& plan, int index);

// `after` with the one locked trench of it that lies otherwise than in `before`, of as many points, brought
// back to where it may lie; as it is where none does.
Plan stopped(const Plan& before, Plan after);

// The plan with what is held moved by so much, wherever that is; and as far that way as it may lie.
Plan wished_trench(Plan plan, const TrenchHold& hold, Point by);
Plan dragged_trench(Plan plan, const TrenchHold& hold, Point by);

// What keeps the one locked trench that lies otherwise in `wish` than in `is` from going on there, in words;
// empty where nothing does.
QString what_stopped(const Plan& is, const Plan& wish);

// Locks a placed trench where it lies, or lets a locked one go.
Plan with_lock_turned(Plan plan, const Trench& trench);
// All of them locked, or all let go; the coil in the run, which cannot be, is passed over.
Plan with_locks(Plan plan, const std::vector<Trench>& trenches, bool locked);

// Holds the header on the line it lies on, or the run to the places it passes; lets go what was held.
// `group`: of a group of trenches, from 1 on; 0: of all there are.
Plan with_header_lock_turned(Plan plan, const Layout& layout, int group = 0);
Plan with_run_lock_turned(Plan plan, const Layout& layout);

}  // namespace underlawn
