// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr int kMany = 500;  // hours of a year; our own choice

}  // namespace

std::vector<Finding> outside_table(const Plan&, const Outcome& outcome) {
  const YearSum* y = last_year(outcome);
  if (y == nullptr || y->hours_outside_table == 0) return {};
  Finding f =
      make_finding("outside_table", "", y->hours_outside_table > kMany ? Severity::warning : Severity::hint,
                   say("The water leaves the heat pump's performance table"));
  set_measure(f, 3600.0 * y->hours_outside_table, 0, Quantity::duration);
  f.advice = say("Beyond its ends the table's end value is taken. Enter more rows of the maker's table.");
  f.source = say("nothing is extrapolated");
  return {f};
}

}  // namespace underlawn::checks
