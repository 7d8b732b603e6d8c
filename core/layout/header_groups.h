// SPDX-License-Identifier: GPL-3.0-or-later
// Which group of trenches a leg of the header belongs to, and the line a group's heads lie on.
#pragma once

#include <optional>

#include "layout/layout.h"

namespace underlawn {

// From 1 on; 1 where the trenches are one field. A leg that only leads to a group's header belongs to it.
int group_of_leg(const Layout& layout, std::size_t leg);

// The longest straight line between ends of the group's legs: a header that lies across the heads has its two
// longest legs on one line. Of several groups only what lies across the group's trenches. Where heads face
// each other, the line across half way between them, if that is nearer to them. Nothing where there is none.
std::optional<Segment> line_of_header(const Layout& layout, int group);

// The line held for the header of a group, from 1 on.
std::optional<Segment> header_line(const Wishes& wishes, int group);
bool header_is_held(const Wishes& wishes, int group);  // 0: any
// The wishes with that line held, or free.
Wishes with_header_line(Wishes wishes, int group, const std::optional<Segment>& line);

}  // namespace underlawn
