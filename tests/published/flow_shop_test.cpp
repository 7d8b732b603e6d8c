// SPDX-License-Identifier: GPL-3.0-or-later
// Two stations against worked examples of Johnson's rule (Johnson 1954; examples as printed, where their
// makespan is wrong as worked again by hand).
#include "cost/flow_shop.h"

#include <gtest/gtest.h>

namespace underlawn {
namespace {

std::vector<ShopJob> jobs(std::initializer_list<std::pair<double, double>> times) {
  std::vector<ShopJob> all;
  for (const auto& [first, second] : times) all.push_back({first, 0, second});
  return all;
}

}  // namespace

// A(5,2) B(1,6) C(9,7) D(3,8) E(10,4): order B D C E A, makespan 30, second machine idle 3.
TEST(FlowShopPublished, FiveJobsTakeThirty) {
  const auto order = jobs({{1, 6}, {3, 8}, {9, 7}, {10, 4}, {5, 2}});
  EXPECT_DOUBLE_EQ(makespan(order), 30);
  double idle = 0;
  for (const ShopStay& s : pass_shop(order)) idle += s.second_waited;
  EXPECT_DOUBLE_EQ(idle, 3);
}

// L(10,2) M(5,4) N(7,5) O(3,6) P(1,7): order P O N M L. The first machine alone ends at 26; the whole at 28.
TEST(FlowShopPublished, TheLastJobStillPassesTheSecondMachine) {
  const auto order = jobs({{1, 7}, {3, 6}, {7, 5}, {5, 4}, {10, 2}});
  EXPECT_DOUBLE_EQ(makespan(order), 28);
  EXPECT_DOUBLE_EQ(pass_shop(order).back().left_first, 26);
}

// A(3,8) B(12,10) C(5,9) D(2,6) E(9,3) F(11,1): order D A C B E F; F leaves the first machine at 42 only.
TEST(FlowShopPublished, SixJobsTakeFortyThree) {
  EXPECT_DOUBLE_EQ(makespan(jobs({{2, 6}, {3, 8}, {5, 9}, {12, 10}, {9, 3}, {11, 1}})), 43);
}

// Makespan of n equal jobs is first + second + (n - 1) x the longer: plain counting.
TEST(FlowShop, EqualJobsFollowTheSlowerStation) {
  for (const auto& [first, second] : {std::pair{3.0, 2.0}, {2.0, 3.0}, {4.0, 4.0}, {0.0, 5.0}})
    for (std::size_t n : {1u, 2u, 7u})
      EXPECT_DOUBLE_EQ(makespan(std::vector<ShopJob>(n, {first, 0, second})),
                       first + second + static_cast<double>(n - 1) * std::max(first, second));
}

// The set-up needs no job: of n equal ones the last leaves when both stations, each by itself, can have done
// with it, or when the second has worked without a stop after the first trench.
TEST(FlowShop, ASetUpRacesTheFirstStation) {
  EXPECT_DOUBLE_EQ(makespan({{3, 3, 1}, {3, 3, 1}, {3, 3, 1}}), 12);  // 3 x (3 + 1), nobody waits
  EXPECT_DOUBLE_EQ(makespan({{5, 3, 1}, {5, 3, 1}, {5, 3, 1}}), 16);  // 3 x 5 + 1, the second waits
  const auto stays = pass_shop({{5, 3, 1}, {5, 3, 1}, {5, 3, 1}});
  EXPECT_DOUBLE_EQ(stays[0].second_waited, 2);
  EXPECT_DOUBLE_EQ(stays[1].second_waited, 1);  // laid at 6, made at 9, dug at 10
  EXPECT_DOUBLE_EQ(makespan({}), 0);
}

}  // namespace underlawn
