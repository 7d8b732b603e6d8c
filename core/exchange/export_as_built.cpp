// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/export_as_built.h"

#include "base/say.h"
#include "exchange/export_plan.h"
#include "plan/record/as_built_csv.h"

namespace underlawn {

Result<std::string> as_built_file(std::string_view form, const Plan& plan, const Outcome& planned,
                                  const AsBuiltAnswer& built) {
  if (form == "csv") return as_built_csv(plan, planned, built);
  const auto drawing = export_form(form);
  if (!drawing)
    return refuse({"export_form", say("the kind of file"), std::string(form),
                   say("{}, {}, {} or {}", "csv", "dxf", "geojson", "gpkg"), ""});
  const Outcome& o = *built.outcome;
  return exported(*drawing, built.plan, export_parts(built.plan, built.loop.layout, o.stake_out));
}

}  // namespace underlawn
