// SPDX-License-Identifier: GPL-3.0-or-later
// Things of a lot on the system's clipboard, so that they can be pasted into another window too.
#pragma once

#include <optional>

#include "plan/plan.h"

namespace underlawn {

void put_on_clipboard(const Plan& things);
// None where there is nothing of ours on it.
std::optional<Plan> things_on_clipboard();

}  // namespace underlawn
