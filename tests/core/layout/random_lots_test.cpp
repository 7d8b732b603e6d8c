// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/random_lots.h"

#include <gtest/gtest.h>

#include "core/layout/judge.h"

namespace underlawn {
namespace {

constexpr int kLotsAShard = 1000;

Coil coil_of(double trench_length) {
  Coil c;
  c.trench_length = trench_length;
  return c;
}

class RandomLots : public testing::TestWithParam<int> {};

// No trench, header or run leaves the lot, enters ground it may not, or stands nearer its neighbour than
// asked.
TEST_P(RandomLots, KeepEveryRuleByTheJudgesMeasure) {
  int with_trenches = 0, with_run = 0;
  for (int i = 0; i < kLotsAShard; ++i) {
    const auto seed = static_cast<std::uint64_t>(GetParam() * kLotsAShard + i);
    const sample::RandomLot lot = sample::random_lot(seed);
    const Layout layout = make_layout(lot.site, lot.wishes, coil_of(lot.wishes.trench_length));
    for (const std::string& fault : judge::faults(lot.site, lot.wishes, layout, lot.wishes.trench_length))
      ADD_FAILURE() << "seed " << seed << ": " << fault;
    with_trenches += !layout.trenches.empty();
    with_run += !layout.run.line.empty();
  }
  // The lots are such that the judge has work.
  EXPECT_GT(with_trenches, kLotsAShard / 3);
  EXPECT_GT(with_run, kLotsAShard / 4);
}

INSTANTIATE_TEST_SUITE_P(TenThousand, RandomLots, testing::Range(0, 10));

}  // namespace
}  // namespace underlawn
