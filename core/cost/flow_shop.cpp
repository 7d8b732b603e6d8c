// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/flow_shop.h"

namespace underlawn {

std::vector<ShopStay> pass_shop(const std::vector<ShopJob>& jobs) {
  std::vector<ShopStay> stays;
  double first = 0, second = 0;  // when each station is free
  for (const ShopJob& job : jobs) {
    first += job.first;
    const double ready = second + job.set_up;
    const double begins = std::max(first, ready);
    second = begins + job.second;
    stays.push_back({first, begins, second, begins - ready});
  }
  return stays;
}

double makespan(const std::vector<ShopJob>& jobs) {
  return jobs.empty() ? 0 : pass_shop(jobs).back().left_second;
}

}  // namespace underlawn
