// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "cost/bill.h"
#include "plan/checks/measure.h"
#include "plan/checks/price_rules.h"

namespace underlawn::checks {

std::vector<Finding> price_missing(const Plan&, const Outcome& outcome) {
  if (outcome.bill == nullptr) return {};
  std::vector<std::string> names;
  for (const BillLine& line : outcome.bill->lines)
    if (!line.price) names.push_back(line.item);
  if (names.empty()) return {};
  Finding f = make_finding("price_missing", "", Severity::warning,
                           names.size() == 1
                               ? say("{} has no price", names.front())
                               : say("{} lines of the bill have no price", std::to_string(names.size())));
  set_measure(f, static_cast<double>(names.size()), 0, Quantity::count);
  f.advice =
      say("Enter it in the price book; until then the line counts for nothing and the total is too low.");
  f.source = say("price book of the plan");
  return {f};
}

}  // namespace underlawn::checks
