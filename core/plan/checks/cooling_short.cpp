// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kMuch = 0.01;  // of the year's cooling; our own choice

}  // namespace

std::vector<Finding> cooling_short(const Plan& plan, const Outcome& outcome) {
  const YearSum* y = last_year(outcome);
  if (y == nullptr || y->unmet_cooling <= kMuch * y->cooling) return {};
  Finding f =
      make_finding("cooling_short", "", Severity::warning,
                   say("The heat pump leaves {} a year uncooled",
                       print_quantity(Quantity::energy, y->unmet_cooling, plan.units, Fineness::coarse)));
  set_measure(f, y->unmet_cooling / y->cooling, kMuch, Quantity::ratio);
  f.advice = say("Take a larger heat pump, or lessen the gain.");
  f.source = say("share of the year's cooling; the bound is our own choice");
  return {f};
}

}  // namespace underlawn::checks
