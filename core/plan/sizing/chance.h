// SPDX-License-Identifier: GPL-3.0-or-later
// With what chance a laid loop holds its limits, seeing that soil and load are known only so well.
#pragma once

#include <cstdint>
#include <functional>
#include <stop_token>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// Standard deviations. Conductivity, heat capacity and load are lognormal about the plan's own as median, so
// that none falls to 0; the mean ground temperature is normal. Our own judgement, no source.
struct Spreads {
  double conductivity = 0.20;     // of ln k: 20 %
  double heat_capacity = 0.10;    // of ln C
  double load = 0.10;             // of ln of the house's every hour
  double mean_temperature = 0.5;  // K
};

struct ChanceWishes {
  int draws = 300;  // 1..100 000
  std::uint64_t seed = 1;
  Spreads spreads;
};

struct Quantiles {
  double low = 0, middle = 0, high = 0;  // 5, 50, 95 %
};

struct Chance {
  int draws = 0;
  int holding = 0;                 // draws that keep both limits through the design life
  int too_cold = 0, too_warm = 0;  // draws beyond the one or the other
  double share = 0;                // holding / draws
  double low = 0, high = 0;        // 95 % interval of the share by Wilson
  Quantiles coldest, warmest;      // deg C entering, of the design life
};

// Wilson 1927, J. Am. Stat. Assoc. 22:209-212, for a share of `successes` in `trials` (> 0) with z = 1.96.
struct ShareInterval {
  double low = 0, high = 0;
};
ShareInterval wilson(int successes, int trials);

// Each draw scales k R(t) of the laid pipe, which is the geometry's, to its own soil and runs the design life
// again. `outcome` must be the plan's, with temperatures. The same seed gives the same answer on every
// machine. Refuses no temperatures, draws out of bounds, negative spreads; asked to stop, refuses with
// "chance_stopped". The sink plane's rise for grass and air is kept at the plan's conductivity.
Result<Chance> chance_of_holding(const Plan& plan, const Outcome& outcome, const ChanceWishes& wishes = {},
                                 const std::function<void(double)>& progress = {}, std::stop_token stop = {});

}  // namespace underlawn
