// SPDX-License-Identifier: GPL-3.0-or-later
// A step response as a sum of exponentials, so that an hour of simulation costs a few multiplications and no
// history.
#pragma once

#include <functional>
#include <vector>

namespace underlawn {

// R(t) = sum of size_i (1 - exp(-t/tau_i)), every size_i >= 0.
struct ExponentialSum {
  std::vector<double> size;  // m K/W
  std::vector<double> tau;   // s, rising
  double operator()(double t) const;
};

struct ExponentialFit {
  ExponentialSum sum;
  double worst_relative_error = 0;  // over the times fitted
};

// Non-negative least squares (Lawson & Hanson, Solving Least Squares Problems, 1974, ch. 23) on the relative
// error, at log-spaced times from `first` to `last` (s), with `terms` time constants log-spaced over the same
// span widened. Needs R rising and concave, as every step response of pipes that all give the same heat is.
ExponentialFit fit_exponentials(const std::function<double(double)>& response, double first, double last,
                                int terms);

}  // namespace underlawn
