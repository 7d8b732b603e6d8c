// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "cost/bill.h"
#include "dig/dates.h"
#include "plan/checks/measure.h"
#include "plan/checks/price_rules.h"

namespace underlawn::checks {

std::vector<Finding> price_old(const Plan& plan, const Outcome& outcome) {
  if (outcome.bill == nullptr) return {};
  const PriceBook& book = plan.pricing.book;
  const auto now = day_of_prices(book);
  int count = 0, oldest = 0;
  std::string name;
  for (const BillLine& line : outcome.bill->lines) {
    if (!line.old) continue;
    const int age = *now - *day_number(row_of(book, plan.wishes, line.row).date);
    if (age > oldest) name = line.item;
    oldest = std::max(oldest, age);
    ++count;
  }
  if (count == 0) return {};
  Finding f =
      make_finding("price_old", "", Severity::hint,
                   count == 1 ? say("The price of {} is old", name)
                              : say("{} prices are old, the oldest that of {}", std::to_string(count), name));
  set_measure(f, oldest, book.oldest, Quantity::count);
  f.advice =
      book.date.empty()
          ? say("Ask for it again, and enter price and date; days against the newest date in the book.")
          : say("Ask for it again, and enter price and date; days against the date of the offer.");
  f.source = say("age set in the price book");
  return {f};
}

}  // namespace underlawn::checks
