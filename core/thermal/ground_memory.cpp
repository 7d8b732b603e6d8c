// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/ground_memory.h"

#include <cassert>
#include <cmath>

namespace underlawn {

GroundMemory::GroundMemory(const ExponentialSum& sum, double pipe) {
  constexpr double kHour = 3600;
  assert(sum.size.size() <= kMostTerms && sum.size.size() == sum.tau.size());
  for (std::size_t i = 0; i < sum.size.size(); ++i) {
    const double keep = std::exp(-kHour / sum.tau[i]);
    const double gain = -sum.size[i] * std::expm1(-kHour / sum.tau[i]) / pipe;
    keep_[i / 2][i % 2] = keep;
    gain_[i / 2][i % 2] = keep * gain;
    one_hour_ += gain;
    next_hour_ += keep * gain;
  }
}

}  // namespace underlawn
