// SPDX-License-Identifier: GPL-3.0-or-later
// What was really dug, for other programs.
#pragma once

#include "plan/record/as_built_solve.h"

namespace underlawn {

// The whole file. `form`: "csv" (as_built_csv.h), "dxf", "geojson" or "gpkg" (export_plan.h). Refuses others,
// and what exported() refuses.
Result<std::string> as_built_file(std::string_view form, const Plan& plan, const Outcome& planned,
                                  const AsBuiltAnswer& built);

}  // namespace underlawn
