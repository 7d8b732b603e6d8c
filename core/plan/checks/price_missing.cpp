// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

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
  std::string listed;
  for (std::size_t i = 0; i < std::min(names.size(), kMostListed); ++i)
    listed += (i > 0 ? "; " : "") + names[i];
  if (names.size() > kMostListed) listed += "; …";
  Finding f = make_finding("price_missing", "", Severity::warning,
                           names.size() == 1 ? say("{} has no price", names.front())
                                             : say("{} lines of the bill have no price: {}",
                                                   std::to_string(names.size()), listed));
  f.advice =
      say("Enter it in the price book; until then the line counts for nothing and the total is too low.");
  f.source = say("price book of the plan");
  return {f};
}

}  // namespace underlawn::checks
