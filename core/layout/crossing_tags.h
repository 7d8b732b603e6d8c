// SPDX-License-Identifier: GPL-3.0-or-later
// What crossings are called on paper and on stakes.
#pragma once

#include <string>

#include "layout/layout.h"

namespace underlawn {

// "X1", "X2" by their order in Layout::crossings; "" for one where nothing is met: the edge of an easement.
std::string crossing_tag(const Site& site, const Layout& layout, std::size_t index);

}  // namespace underlawn
