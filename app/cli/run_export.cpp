// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "cli/plan_in.h"
#include "cli/verbs.h"
#include "exchange/export_plan.h"
#include "files/atomic_file.h"
#include "plan/solve.h"

namespace underlawn::cli {

Exit run_export(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const std::string word = arguments.value("--as").value_or("dxf");
  const auto form = export_form(word);
  if (!form) {
    console.complain("", say("--as is “{}”; it must be dxf, geojson or gpkg.", word));
    return Exit::usage;
  }
  const auto plan = plan_in(path, console);
  if (!plan) return Exit::not_read;
  const Outcome outcome = solve(*plan);
  const auto bytes = exported(*form, *plan, export_parts(*plan, outcome.layout, outcome.stake_out));
  if (!bytes) {
    console.complain(path, bytes.error().message());
    return Exit::errors_remain;
  }
  const std::string file = arguments.value("--out").value_or(base_name(path) + std::string(ending_of(*form)));
  const auto written = write_file(file, *bytes);
  if (!written) console.complain(file, written.error().message());
  if (written) console.out << file << "\n";
  return written ? Exit::ok : Exit::not_written;
}

}  // namespace underlawn::cli
