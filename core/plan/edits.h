// SPDX-License-Identifier: GPL-3.0-or-later
// Edits are functions from plan to plan. They never fail half-way: an edit that makes no sense gives the plan back.
#pragma once

#include <optional>

#include "plan/plan.h"

namespace underlawn::edit {

// What a pointer can take hold of.
struct Handle {
  enum class Kind { lot_corner, feature_point, entry } kind = Kind::lot_corner;
  int feature_id = 0;  // feature_point
  int index = 0;       // corner or point
  bool operator==(const Handle&) const = default;
};

int next_feature_id(const Plan& plan);
Plan with_lot(Plan plan, const Ring& corners, double setback);
Plan with_setback(Plan plan, int edge, double setback);
Plan with_feature(Plan plan, Feature feature);       // id 0: gets the next one; an existing id: replaced
Plan without_feature(Plan plan, int id);             // a house takes its entry point with it
Plan without_lot(Plan plan);
Plan moved_feature(Plan plan, int id, Point by);     // a house takes its entry point along
Plan moved_lot(Plan plan, Point by);                 // the lot line only
Plan rotated_feature(Plan plan, int id, double radians, Point about);
Plan moved_handle(Plan plan, const Handle& handle, Point to);
Plan inserted_point(Plan plan, const Handle& before_next, Point at);  // after handle.index, on that edge
Plan removed_point(Plan plan, const Handle& handle); // not below three for an area, two for a line
Plan with_entry(Plan plan, Point near);              // on the nearest house wall
std::optional<Point> handle_position(const Plan& plan, const Handle& handle);

}  // namespace underlawn::edit
