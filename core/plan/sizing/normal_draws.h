// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <numbers>
#include <random>

namespace underlawn {

// Standard normal numbers. The standard library leaves its normal distribution to each maker; the engine is
// fixed to the bit, and Box & Muller (Ann. Math. Stat. 29:610, 1958) does the rest.
class NormalDraws {
 public:
  explicit NormalDraws(std::uint64_t seed) : engine_(seed) {}
  double operator()() {
    const double radius = std::sqrt(-2 * std::log(1 - uniform()));
    return radius * std::cos(2 * std::numbers::pi * uniform());
  }

 private:
  double uniform() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }  // 0 <= u < 1

  std::mt19937_64 engine_;
};

}  // namespace underlawn
