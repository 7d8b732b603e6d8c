// SPDX-License-Identifier: GPL-3.0-or-later
// Where a selected thing can be taken hold of, and what taking hold of it does to the plan.
#pragma once

#include <QString>
#include <vector>

#include "plan/edits.h"
#include "window/selection.h"

namespace underlawn {

struct Grip {
  edit::Handle handle;
  Point at;
  bool inserts = false;  // in the middle of an edge: a new corner behind `handle`
};

// Corners first, then the middles of the edges.
std::vector<Grip> grips(const Plan& plan, const Selected& what);

// What the handle belongs to, with the point it is.
Selected owner_of(const edit::Handle& handle);
// The corner that `what` speaks of, where it speaks of one.
std::optional<edit::Handle> handle_of(const Selected& what);

Plan moved_grip(const Plan& plan, const Grip& grip, Point to);
// Features, lot line and entry point moved together; trenches and what else follows from the plan stay.
Plan moved_things(Plan plan, const std::vector<Selected>& what, Point by);
bool can_move(const Selected& what);
Plan without_things(Plan plan, const std::vector<Selected>& what);

QString grip_action(const Grip& grip);  // "Move a lot corner"
QString things_action(const Plan& plan, const QString& verb,
                      const std::vector<Selected>& what);  // "Move House"

}  // namespace underlawn
