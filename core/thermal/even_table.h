// SPDX-License-Identifier: GPL-3.0-or-later
// A smooth function kept at even steps, read between them by cubics.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace underlawn {

class EvenTable {
 public:
  // `f` from low to high, at steps of about `step`; low < high, step > 0.
  template <class F>
  EvenTable(double low, double high, double step, F f) {
    const int steps = std::max(4, static_cast<int>(std::ceil((high - low) / step)));
    step_ = (high - low) / steps;
    low_ = low - step_;  // a point more at each end for the cubics
    for (int i = 0; i < steps + 3; ++i) values_.push_back(f(low_ + i * step_));
  }

  // The cubic through the two values on each side; low <= x <= high.
  double operator()(double x) const {
    const double place = (x - low_) / step_;
    const int i = std::clamp(static_cast<int>(place), 1, static_cast<int>(values_.size()) - 3);
    const double s = place - i;
    const double* v = &values_[static_cast<std::size_t>(i) - 1];
    return v[0] * (-s * (s - 1) * (s - 2) / 6) + v[1] * ((s + 1) * (s - 1) * (s - 2) / 2) +
           v[2] * (-(s + 1) * s * (s - 2) / 2) + v[3] * ((s + 1) * s * (s - 1) / 6);
  }

 private:
  double low_ = 0, step_ = 1;
  std::vector<double> values_;
};

}  // namespace underlawn
