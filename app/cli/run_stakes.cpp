// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/plan_in.h"
#include "cli/verbs.h"
#include "files/atomic_file.h"
#include "files/stake_csv.h"
#include "plan/solve.h"

namespace underlawn::cli {

Exit run_stakes(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto plan = plan_in(path, console);
  if (!plan) return Exit::not_read;
  const Outcome outcome = solve(*plan);
  console.complain(path, outcome.troubles);
  if (outcome.stake_out.ties.empty()) {
    if (outcome.troubles.empty())
      console.complain(path, "There is nothing to stake out. Draw lot, house and entry point.");
    return Exit::errors_remain;
  }
  const std::string text = stake_csv(*plan, outcome);
  const auto file = arguments.value("--out");
  if (!file) {
    console.out << text;
    return Exit::ok;
  }
  const auto written = write_file(*file, text);
  if (!written) console.complain(*file, written.error().message());
  if (written) console.out << *file << "\n";
  return written ? Exit::ok : Exit::not_written;
}

}  // namespace underlawn::cli
