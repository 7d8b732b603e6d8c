// SPDX-License-Identifier: GPL-3.0-or-later
// The pipes of the loop for another program to work out.
#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/plan_in.h"
#include "cli/text_out.h"
#include "cli/verbs.h"
#include "flow/epanet_input.h"
#include "plan/solve.h"

namespace underlawn::cli {

namespace {

// A heading takes one line of the file.
std::string on_one_line(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < ' ') c = ' ';
  return text;
}

void complain_of_no_flow(const Outcome& outcome, const std::string& path, const Console& console) {
  console.complain(path, outcome.troubles);
  if (outcome.flow_refusal) console.complain(path, outcome.flow_refusal->message());
  if (outcome.troubles.empty() && !outcome.flow_refusal)
    console.complain(path,
                     say("No loop is laid out, so there are no pipes to write. Draw lot, house and entry."));
}

}  // namespace

Exit run_epanet(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto plan = plan_in(path, console);
  if (!plan) return Exit::not_read;
  const Outcome outcome = solve(*plan);
  if (outcome.flow == nullptr) {
    complain_of_no_flow(outcome, path, console);
    return Exit::errors_remain;
  }
  const std::string title = on_one_line(plan->title.project.empty() ? base_name(path) : plan->title.project);
  const auto text_of = [&title](const Plan&, const Outcome& o) {
    return epanet_input(o.flow->loop.network, o.flow->design.fluid, o.flow->design.flow, title);
  };
  return put(for_programs(*plan, outcome, text_of), arguments, console);
}

}  // namespace underlawn::cli
