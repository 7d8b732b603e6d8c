// SPDX-License-Identifier: GPL-3.0-or-later
// What is selected, as edits take it.
#pragma once

#include <optional>
#include <vector>

#include "plan/copies.h"
#include "window/selection.h"

namespace underlawn {

edit::Things things_of(const Plan& plan, const std::vector<Selected>& what);
std::vector<Selected> selected_of(const edit::Things& things);
bool empty(const edit::Things& things);

// Every drawn point of them; and the box round these, none where there are none.
std::vector<Point> points_of(const Plan& plan, const edit::Things& things);
std::optional<Box> box_of(const std::vector<Point>& points);
inline Point middle_of(const Box& box) {
  return 0.5 * (box.low + box.high);
}

}  // namespace underlawn
