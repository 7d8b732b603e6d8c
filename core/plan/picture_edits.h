// SPDX-License-Identifier: GPL-3.0-or-later
// A picture under the drawing, laid where it belongs.
#pragma once

#include <optional>

#include "plan/plan.h"

namespace underlawn {

Picture moved(Picture picture, Point by);
Picture turned(Picture picture, Point about, double radians);
// So that `a` and `b`, two different places on the plan, come to lie `metres` apart; `a` stays. Nothing where
// they are one place, or the picture would become larger than a plan or smaller than a millimetre.
std::optional<Picture> scaled(Picture picture, Point a, Point b, double metres);
// So that the way from `a` to `b` has this bearing, rad clockwise from the plan's north; `a` stays.
std::optional<Picture> aligned(Picture picture, Point a, Point b, double bearing, double north);

namespace edit {

// A picture that is locked changes only in strength, hidden, locked, on_sheets and how it is stored; a place
// that is not there, or numbers out of bounds, give the plan back.
Plan with_picture(Plan plan, int index, Picture picture);
Plan with_new_picture(Plan plan, Picture picture);  // above the others; at most kMostPictures
Plan without_picture(Plan plan, int index);

}  // namespace edit
}  // namespace underlawn
