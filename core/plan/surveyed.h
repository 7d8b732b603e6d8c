// SPDX-License-Identifier: GPL-3.0-or-later
// What follows from the survey that a plan keeps, and the edits that draw it on the lot.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "survey/notebook.h"
#include "survey/traverse.h"

namespace underlawn {

struct SurveyedDeed {
  DeedReading reading;
  Traverse traverse;
  std::optional<Trouble> no_lot;  // why its line cannot be the lot line
};
SurveyedDeed surveyed_deed(const Deed& deed, const Plan& plan);

// "lot 1" ... and "house A" ..., tagged as on the dig sheet.
std::vector<KnownPoint> known_points(const Site& site);
std::vector<PlacedSighting> placed_notebook(const Plan& plan);

namespace edit {

// The lot line by the deed, with the setback that the lot's first edge has, or else the usual one. The plan
// as it was where the deed gives no usable line.
Plan with_lot_by_deed(Plan plan, const Deed& deed);

Plan with_sighting(Plan plan, Sighting sighting);  // at the end, under a free name
// Replaces it; points that named it by its old name follow.
Plan with_sighting_at(Plan plan, std::size_t index, Sighting sighting);
Plan without_sighting(Plan plan, std::size_t index);

// Points from a file, each under a free name. A plan without a place on the map, or without a tie to a grid,
// gets one: the middle of the points at the middle of the lot, or at the origin.
Plan with_field_points(Plan plan, std::vector<Sighting> points);
// Moves all satellite points, or all grid points, so that this one lies there.
Plan with_pinned(Plan plan, std::size_t index, Point there);

// A feature, or the lot line, through points of the notebook in the order given; the plan as it was where
// they are too few or one has no place.
Plan with_feature_of(Plan plan, const std::vector<std::size_t>& points, Feature feature);
Plan with_lot_of(Plan plan, const std::vector<std::size_t>& points);

}  // namespace edit

}  // namespace underlawn
