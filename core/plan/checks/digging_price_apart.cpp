// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "base/say.h"
#include "cost/bill.h"
#include "cost/print_price.h"
#include "plan/checks/measure.h"
#include "plan/checks/price_rules.h"

namespace underlawn::checks {

namespace {

constexpr double kMuch = 0.25;  // our own choice

}  // namespace

// The bill charges hours, but the layout was weighed by the price of a cubic metre.
std::vector<Finding> digging_price_apart(const Plan& plan, const Outcome& outcome) {
  const bool weighed = plan.wishes.aim == Aim::cost || plan.wishes.aim == Aim::mix;
  if (outcome.bill == nullptr || plan.pricing.terms.labour != LabourBy::hours || !weighed) return {};
  const double price = plan.wishes.prices.digging, bank = outcome.dig.total.bank;
  double sum = 0;
  for (const BillLine& line : outcome.bill->lines)
    if (line.row == "excavator_hour" || line.row == "loader_hour") sum += line.sum;
  if (bank <= 0 || sum <= 0) return {};
  const double by_hours = sum / bank;
  if (std::abs(by_hours - price) <= kMuch * price) return {};
  Finding f = make_finding("digging_price_apart", "", Severity::hint,
                           say("The layout weighs digging at {}, the hours of the bill come to {}",
                               print_price(price, Quantity::volume, plan.units),
                               print_price(by_hours, Quantity::volume, plan.units)));
  set_measure(f, by_hours, price, Quantity::money);
  f.advice =
      say("Set the price of digging to what the hours come to, so that the layout weighs what is paid.");
  f.source = say("price book of the plan; the bound of a quarter is our own choice");
  return {f};
}

}  // namespace underlawn::checks
