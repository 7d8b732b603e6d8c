// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "files/json_text.h"
#include "plan/sizing/chance.h"
#include "plan/sizing/size_loop.h"

namespace underlawn::cli {

// Keys carry their unit; what there is none of is left out, and a refusal stands in its place.
Json size_json(const LoopSizing& sizing, const std::optional<Chance>& chance);

}  // namespace underlawn::cli
