// SPDX-License-Identifier: GPL-3.0-or-later
// Edits are functions from plan to plan. They never fail half-way: an edit that makes no sense (an index that
// is not there, a number that is not finite or beyond kLargestPlan, too few points) gives the plan back as it
// was. A drawing that is merely wrong, such as a lot line that crosses itself, is kept and reported by
// plan_troubles, so that a drag may pass through it.
#pragma once

#include <optional>
#include <string>

#include "plan/plan.h"

namespace underlawn::edit {

// What a pointer can take hold of.
struct Handle {
  enum class Kind {
    lot_corner,
    feature_point,
    entry,
    locked_point,
    height,
    dimension
  } kind = Kind::lot_corner;
  // feature_point; of locked_point and dimension the place in Wishes::locked, Plan::dimensions
  int feature_id = 0;
  // Corner, point or spot height; of a locked trench: 0 its head, then its bends, last its end; of a
  // dimension: 0 and 1 what it measures between, 2 the middle of its line.
  int index = 0;
  bool operator==(const Handle&) const = default;
};

int next_feature_id(const Plan& plan);  // above every id there is
Plan with_lot(Plan plan, const Ring& corners, double setback);
Plan with_setback(Plan plan, int edge, double setback);
Plan with_feature(Plan plan, Feature feature);  // id 0: gets the next one; an existing id: replaced
// A house takes its entry point with it, and what was accepted about the feature is forgotten, so that a
// later feature of the same id does not inherit it.
Plan without_feature(Plan plan, int id);
Plan without_lot(Plan plan);
Plan moved_feature(Plan plan, int id, Point by);  // a house takes its entry point along
Plan moved_lot(Plan plan, Point by);              // the lot line only
Plan rotated_feature(Plan plan, int id, double radians, Point about);
// A corner of the house takes the entry point along at the same share of its wall; the entry point itself
// slides on the nearest house wall.
Plan moved_handle(Plan plan, const Handle& handle, Point to);
Plan inserted_point(Plan plan, const Handle& before_next, Point at);  // after handle.index, on that edge
Plan removed_point(Plan plan, const Handle& handle);  // not below three for an area, two for a line
Plan with_entry(Plan plan, Point near);               // on the nearest house wall
Plan without_entry(Plan plan);
std::optional<Point> handle_position(const Plan& plan, const Handle& handle);

// Trenches that the designer holds. What would not leave a trench of two points at different places gives the
// plan back.
Plan with_locked(Plan plan, GivenTrench trench);  // behind those there are
Plan without_locked(Plan plan, int index);
Plan moved_locked_handle(Plan plan, int index, int point, Point to);
Plan moved_locked(Plan plan, int index, Point by);

// Replaces the spot height at that place (within kOneHeight) or adds one; a height that is no number or
// beyond kHighest gives the plan back.
Plan with_height(Plan plan, SpotHeight height);
Plan without_height(Plan plan, int index);

Plan with_rule(Plan plan, ClearanceRule rule);  // replaces the kind's own rule
Plan without_rule(Plan plan, FeatureKind kind);
Plan with_acceptance(Plan plan, Acceptance acceptance);  // an empty reason accepts nothing
Plan without_acceptance(Plan plan, const std::string& finding);

}  // namespace underlawn::edit
