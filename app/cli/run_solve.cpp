// SPDX-License-Identifier: GPL-3.0-or-later
#include <filesystem>

#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/plan_in.h"
#include "cli/sheet_out.h"
#include "cli/verbs.h"
#include "files/atomic_file.h"
#include "files/results_file.h"
#include "plan/solve.h"
#include "sheets/setup_for.h"

namespace fs = std::filesystem;

namespace underlawn::cli {

namespace {

// Names the file when it was written, complains when not.
bool told(const Result<void>& written, const fs::path& path, const Console& console) {
  if (written)
    console.out << path.string() << "\n";
  else
    console.complain(path.string(), written.error().message());
  return written.has_value();
}

}  // namespace

Exit run_solve(const Arguments& arguments, const Console& console) {
  const auto plan = plan_in(arguments.places[0], console);
  if (!plan) return Exit::not_read;
  const fs::path folder = arguments.value("--out").value_or(base_name(arguments.places[0]) + "-out");
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) {
    console.complain(folder.string(), say("The folder cannot be made ({}).", translated(error.message())));
    return Exit::not_written;
  }
  const Outcome outcome = solve(*plan);
  console.complain(arguments.places[0], outcome.troubles);
  const fs::path results = folder / "results.json", sheet = folder / "dig-sheet.pdf";
  bool all = told(write_file(results, for_programs(*plan, outcome, results_to_text)), results, console);
  SheetOrder order{{find_sheet_kind("dig")},
                   setup_for(*plan, QString::fromStdString(arguments.places[0])),
                   sheet.string(),
                   false,
                   ""};
  const auto written = sheets_out(*plan, outcome, order);
  all &= told(written ? Result<void>() : refuse(written.error()), sheet, console);
  if (has_unaccepted_errors(outcome))
    console.complain(arguments.places[0], say("Unaccepted errors remain; “underlawn check” lists them."));
  return all ? Exit::ok : Exit::not_written;
}

}  // namespace underlawn::cli
