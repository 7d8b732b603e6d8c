// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "base/quantity.h"

namespace underlawn {

// What was typed where the time `shown` (s) stands: a number alone is of the unit seen there, seconds behind
// "20 s". Other quantities are left as they are.
std::string with_shown_unit(Quantity quantity, const QString& typed, double shown, UnitSystem units);

}  // namespace underlawn
