// SPDX-License-Identifier: GPL-3.0-or-later
// What in a record cannot be: numbers beyond their bounds, dates that are none, trenches told of twice.
#pragma once

#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "plan/record/as_built.h"
#include "plan/record/job_record.h"

namespace underlawn {

std::vector<Trouble> record_troubles(const JobRecord& record, UnitSystem units = UnitSystem::metric);
std::vector<Trouble> as_built_troubles(const AsBuilt& built, UnitSystem units = UnitSystem::metric);

}  // namespace underlawn
