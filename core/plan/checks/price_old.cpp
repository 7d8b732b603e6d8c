// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/bill.h"
#include "dig/dates.h"
#include "plan/checks/measure.h"
#include "plan/checks/price_rules.h"

namespace underlawn::checks {

std::vector<Finding> price_old(const Plan& plan, const Outcome& outcome) {
  if (outcome.bills == nullptr) return {};
  const PriceBook& book = plan.pricing.book;
  const auto now = day_of_prices(book);
  int count = 0, oldest = 0;
  std::string name;
  for (const BillLine& line : outcome.bills->vertical.lines) {
    if (!line.old) continue;
    const int age = *now - *day_number(row_of(book, plan.wishes, line.row).date);
    if (age > oldest) name = line.item;
    oldest = std::max(oldest, age);
    ++count;
  }
  if (count == 0) return {};
  Finding f =
      make_finding("price_old", "", Severity::hint,
                   count == 1 ? "The price of " + name + " is old"
                              : std::to_string(count) + " prices are old, the oldest that of " + name);
  set_measure(f, oldest, book.oldest, Quantity::count);
  f.advice = "Ask for it again, and enter price and date; days against " +
             std::string(book.date.empty() ? "the newest date in the book." : "the date of the offer.");
  f.source = "age set in the price book";
  return {f};
}

}  // namespace underlawn::checks
