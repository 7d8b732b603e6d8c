// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "plane/region.h"

namespace underlawn {

// What is left of `from` without each of the parts, overlapping or not: quicker than to unite them first.
Region subtract_all(const Region& from, const std::vector<Region>& parts);

}  // namespace underlawn
