// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kMuch = 0.10;  // of the year's heat by back-up; our own choice

}  // namespace

std::vector<Finding> backup_heat(const Plan& plan, const Outcome& outcome) {
  const YearSum* y = last_year(outcome);
  if (y == nullptr || y->backup <= kMuch * y->heating) return {};
  Finding f = make_finding("backup_heat", "", Severity::warning,
                           say("The heat pump leaves {} a year to back-up heat",
                               print_quantity(Quantity::energy, y->backup, plan.units, Fineness::coarse)));
  set_measure(f, y->backup / y->heating, kMuch, Quantity::ratio);
  f.advice = say("Take a larger heat pump, or say to the owner what the back-up heat will cost.");
  f.source = say("share of the year's heat; the bound is our own choice");
  return {f};
}

}  // namespace underlawn::checks
