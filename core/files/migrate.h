// SPDX-License-Identifier: GPL-3.0-or-later
// Older plans become today's by steps on the parsed tree, one step a version. A step never goes away and
// neither does the test that has a plan of its version.
#pragma once

#include <span>
#include <vector>

#include "files/json_text.h"

namespace underlawn {

// Turns a tree of one version into the next one's; says in `remarks` what a reader of the plan should know.
using MigrationStep = void (*)(Json& tree, std::vector<Trouble>& remarks);

// The steps there are: the first makes version 2 of version 1.
std::span<const MigrationStep> migration_steps();

// Runs the steps from `version` on and sets "format_version". `version` is at least 1.
void migrate(Json& tree, int version, std::span<const MigrationStep> steps, std::vector<Trouble>& remarks);

}  // namespace underlawn
