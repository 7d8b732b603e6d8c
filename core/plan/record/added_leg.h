// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "layout/layout.h"
#include "layout/wishes.h"

namespace underlawn {

// The shortest way for a header leg from run or header, as they lie, to the head of a further trench: in
// ground open to header and run, off all coils but for half a header trench's width at their heads. Nothing
// where there is none.
std::optional<Polyline> leg_to(const Wishes& wishes, const Layout& laid, const Trench& added);

}  // namespace underlawn
