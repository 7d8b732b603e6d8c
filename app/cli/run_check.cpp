// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "cli/plan_in.h"
#include "cli/verbs.h"
#include "plan/solve.h"

namespace underlawn::cli {

namespace {

std::string word_for(Severity severity) {
  switch (severity) {
    case Severity::hint:
      return say("hint");
    case Severity::warning:
      return say("warning");
    case Severity::error:
      return say("error");
  }
  return "";
}

// "Too close (9'-11 1/2", required 10'-0")": as fine as it takes to tell the two apart.
std::string measured_title(const Finding& f, UnitSystem units) {
  if (f.measured == f.required) return f.title;
  std::string measured, required;
  for (Fineness fineness : {Fineness::normal, Fineness::fine}) {
    measured = print_quantity(f.quantity, f.measured, units, fineness);
    required = print_quantity(f.quantity, f.required, units, fineness);
    if (measured != required) break;
  }
  return say("{} ({}, required {})", f.title, measured, required);
}

std::string line_for(const Finding& f, UnitSystem units) {
  std::string line(word_for(f.severity));
  line += ": " + f.key + ": " + measured_title(f, units) + ".";
  if (!f.advice.empty()) line += " " + f.advice;
  if (f.accepted) line = say("{} [accepted: {}]", line, f.reason);
  return line + "\n";
}

std::string summary(const std::vector<Finding>& findings) {
  const auto open = [&](Severity severity) {
    return std::ranges::count_if(findings,
                                 [&](const Finding& f) { return f.severity == severity && !f.accepted; });
  };
  const auto accepted = std::ranges::count_if(findings, &Finding::accepted);
  const auto errors = open(Severity::error), warnings = open(Severity::warning), hints = open(Severity::hint);
  return say("{}, {}, {}, {} accepted", errors == 1 ? say("1 error") : say("{} errors", errors),
             warnings == 1 ? say("1 warning") : say("{} warnings", warnings),
             hints == 1 ? say("1 hint") : say("{} hints", hints), accepted) +
         "\n";
}

// Whether an input stopped a stage. What the placer could not do is a finding too, which may be accepted; but
// without a lot there is nothing to find.
bool stopped_by_input(const Plan& plan, const Outcome& outcome) {
  if (plan.site.lot.empty()) return true;
  return std::ranges::any_of(outcome.troubles, [&](const Trouble& t) {
    return std::ranges::find(outcome.layout.troubles, t) == outcome.layout.troubles.end();
  });
}

}  // namespace

Exit run_check(const Arguments& arguments, const Console& console) {
  const auto plan = plan_in(arguments.places[0], console);
  if (!plan) return Exit::not_read;
  const Outcome outcome = solve(*plan);
  console.complain(arguments.places[0], outcome.troubles);
  for (const Finding& f : outcome.findings) console.out << line_for(f, plan->units);
  console.out << summary(outcome.findings);
  const bool sound = !stopped_by_input(*plan, outcome) && !has_unaccepted_errors(outcome);
  return sound ? Exit::ok : Exit::errors_remain;
}

}  // namespace underlawn::cli
