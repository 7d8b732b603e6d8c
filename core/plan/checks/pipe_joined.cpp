// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "cost/bill.h"
#include "plan/checks/measure.h"
#include "plan/checks/price_rules.h"

namespace underlawn::checks {

namespace {

std::string title(int circuits) {
  return circuits == 1
             ? say("{} circuit is longer than the longest pipe that is sold: a joint lies in the trench",
                   circuits)
             : say("{} circuits are longer than the longest pipe that is sold: a joint lies in the trench",
                   circuits);
}

}  // namespace

std::vector<Finding> pipe_joined(const Plan& plan, const Outcome& outcome) {
  if (outcome.bill == nullptr) return {};
  for (const BillLine& line : outcome.bill->lines) {
    if (line.bought.joins == 0) continue;
    const PriceRow row = row_of(plan.pricing.book, plan.wishes, line.row);
    Finding f = make_finding("pipe_joined", "", Severity::warning, title(line.bought.cut_short));
    set_measure(f, line.needed / static_cast<double>(outcome.layout.trenches.size()), row.packs.back());
    f.advice = say("Take a shorter coil, or enter in the price book the length that your supplier rolls.");
    f.source = say("price book of the plan; joints only where they can be seen: common practice, no source");
    f.places = trench_places(outcome.layout);
    return {f};
  }
  return {};
}

}  // namespace underlawn::checks
