// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/bill.h"
#include "plan/checks/measure.h"
#include "plan/checks/price_rules.h"

namespace underlawn::checks {

std::vector<Finding> price_missing(const Plan&, const Outcome& outcome) {
  if (outcome.bills == nullptr) return {};
  std::vector<std::string> names;
  for (const BillLine& line : outcome.bills->vertical.lines)
    if (!line.price) names.push_back(line.item);
  if (names.empty()) return {};
  Finding f =
      make_finding("price_missing", "", Severity::warning,
                   names.size() == 1 ? names.front() + " has no price"
                                     : std::to_string(names.size()) + " lines of the bill have no price");
  set_measure(f, static_cast<double>(names.size()), 0, Quantity::count);
  f.advice = "Enter it in the price book; until then the line counts for nothing and the total is too low.";
  f.source = "price book of the plan";
  return {f};
}

}  // namespace underlawn::checks
