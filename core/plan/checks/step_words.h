// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "dig/dig_order.h"

namespace underlawn {

// "trench 3, header and supply run": all of them, a crew has to know which.
std::string steps_named(const std::vector<const DigStep*>& steps);

}  // namespace underlawn
