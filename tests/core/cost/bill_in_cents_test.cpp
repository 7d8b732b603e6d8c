// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/bill_in_cents.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

// As a reader has it who adds up what is printed with two places.
long long cents(double sum) {
  return std::llround(100 * sum);
}

TEST(BillInCents, PartsRoundedAddUpToTheRoundedTotalEachWithinAStep) {
  std::mt19937 random(20261126);
  std::uniform_real_distribution<double> any(-50, 900);
  for (int run = 0; run < 500; ++run) {
    std::vector<double> parts(1 + random() % 40);
    for (double& p : parts) p = any(random);
    const double total = std::accumulate(parts.begin(), parts.end(), 0.0);
    const auto rounded = rounded_to_add_up(parts, total, 0.01);
    long long sum = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      sum += cents(rounded[i]);
      EXPECT_LT(std::abs(rounded[i] - parts[i]), 0.0100001);
    }
    EXPECT_EQ(sum, cents(total));
  }
  // A dollar among three, by dimes: the first has the odd one.
  EXPECT_EQ(rounded_to_add_up({100.0 / 3, 100.0 / 3, 100.0 / 3}, 100, 10), (std::vector<double>{40, 30, 30}));
}

TEST(BillInCents, AnyBillAddsUpAsItIsPrinted) {
  Plan plan = sample::half_acre();
  plan.pricing.terms.overhead = 0.1037;
  plan.pricing.terms.markup = 0.1213;
  plan.pricing.terms.tax = 0.0825;
  plan.pricing.terms.incentives = {{"A", IncentiveKind::percent, 0.07137, std::nullopt},
                                   {"B", IncentiveKind::percent, 0.0213, std::nullopt}};
  const Bill before = *solve(plan).bill;
  const Bill bill = in_cents(before);
  long long lines = 0, paid = 0;
  for (const BillLine& line : bill.lines) lines += cents(line.sum);
  for (const IncentivePaid& i : bill.incentives) paid += cents(i.amount);
  EXPECT_EQ(lines, cents(bill.cost));
  EXPECT_EQ(cents(bill.cost) + cents(bill.overhead) + cents(bill.markup) + cents(bill.tax),
            cents(bill.price));
  EXPECT_EQ(cents(bill.price) - paid, cents(bill.net));
  EXPECT_NEAR(bill.price, before.price, 0.005001);
  EXPECT_NEAR(bill.net, before.net, 0.005001);
}

}  // namespace
}  // namespace underlawn
