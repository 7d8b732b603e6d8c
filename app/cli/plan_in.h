// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "cli/console.h"
#include "plan/plan.h"

namespace underlawn::cli {

// The plan in a file; complains of what cannot be read, and remarks on what was left out.
std::optional<Plan> plan_in(const std::string& path, const Console& console);

// "lane" of "somewhere/lane.underlawn": what files about a plan are called.
std::string base_name(const std::string& path);

}  // namespace underlawn::cli
