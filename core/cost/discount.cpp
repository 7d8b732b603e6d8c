// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/discount.h"

#include <cmath>

namespace underlawn {

double single_present_value(double discount, int year) {
  return std::pow(1 + discount, -year);
}

double uniform_present_value(double discount, int years) {
  return modified_present_value(discount, 0, years);
}

double modified_present_value(double discount, double escalation, int years) {
  const double ratio = (1 + escalation) / (1 + discount);
  if (std::abs(ratio - 1) < 1e-12) return years;
  return ratio * (1 - std::pow(ratio, years)) / (1 - ratio);
}

std::optional<double> payback_years(double extra, const std::vector<double>& savings, double discount) {
  double left = extra;
  std::optional<double> paid;
  if (!(left > 0)) paid = 0;
  for (std::size_t i = 0; i < savings.size(); ++i) {
    const double worth = savings[i] * single_present_value(discount, static_cast<int>(i) + 1);
    if (left > 0 && worth >= left) paid = static_cast<double>(i) + left / worth;
    left -= worth;
    if (left > 0) paid.reset();
  }
  return paid;
}

std::optional<double> simple_payback(double extra, double yearly_savings) {
  if (!(extra > 0)) return 0;
  if (!(yearly_savings > 0)) return std::nullopt;
  return extra / yearly_savings;
}

}  // namespace underlawn
