// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/plan_in.h"
#include "cli/text_out.h"
#include "cli/verbs.h"
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
      console.complain(path, say("There is nothing to stake out. Draw lot, house and entry point."));
    return Exit::errors_remain;
  }
  return put(for_programs(*plan, outcome, stake_csv), arguments, console);
}

}  // namespace underlawn::cli
