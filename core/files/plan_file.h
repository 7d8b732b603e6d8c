// SPDX-License-Identifier: GPL-3.0-or-later
// The plan on disk: UTF-8 JSON, format version first, ids sorted, SI with units in the key names, no derived
// data. Loading and saving again gives the same bytes. Schema: resources/plan.schema.json.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"
#include "plan/plan.h"

namespace underlawn {

inline constexpr int kPlanFormat = 3;
inline constexpr std::string_view kPlanSuffix = ".underlawn";

std::string plan_to_text(const Plan& plan);

// Reads what it can and remarks on what it had to leave out. Refuses what is not a plan at all: not JSON,
// truncated, of a newer version, larger than 64 MiB.
Result<WithRemarks<Plan>> plan_from_text(std::string_view text);

Result<WithRemarks<Plan>> load_plan(const std::filesystem::path& path);
// Atomic: written beside and renamed over; on error the old file is as it was.
Result<void> save_plan(const Plan& plan, const std::filesystem::path& path);

}  // namespace underlawn
