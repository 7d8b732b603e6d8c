// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/bill_in_cents.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace underlawn {

namespace {

constexpr double kCent = 0.01;

double to_cents(double sum) {
  return std::round(sum / kCent) * kCent;
}

void round_lines(Bill& bill) {
  std::vector<double> sums;
  for (const BillLine& line : bill.lines) sums.push_back(line.sum);
  sums = rounded_to_add_up(sums, bill.cost, kCent);
  bill.materials = bill.work = bill.own = 0;
  for (std::size_t i = 0; i < sums.size(); ++i) {
    bill.lines[i].sum = sums[i];
    (bill.lines[i].group == BillGroup::own    ? bill.own
     : bill.lines[i].group == BillGroup::work ? bill.work
                                              : bill.materials) += sums[i];
  }
}

}  // namespace

std::vector<double> rounded_to_add_up(const std::vector<double>& parts, double total, double step) {
  std::vector<double> steps;
  steps.reserve(parts.size());
  for (double part : parts) steps.push_back(std::floor(part / step + 1e-9));
  double left = std::round(total / step) - std::accumulate(steps.begin(), steps.end(), 0.0);
  std::vector<std::size_t> order(parts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto remainder = [&](std::size_t i) { return parts[i] / step - steps[i]; };
  std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) { return remainder(a) > remainder(b); });
  for (std::size_t i = 0; i < order.size() && left >= 1; ++i) {
    steps[order[i]] += 1;
    left -= 1;
  }
  for (double& s : steps) s *= step;
  return steps;
}

Bill in_cents(Bill bill) {
  round_lines(bill);
  const double cost = to_cents(bill.cost), price = to_cents(bill.price), net = to_cents(bill.net);
  const auto on_top = rounded_to_add_up({bill.overhead, bill.markup, bill.tax}, price - cost, kCent);
  bill.cost = cost, bill.price = price, bill.net = net;
  bill.overhead = on_top[0], bill.markup = on_top[1], bill.tax = on_top[2];
  std::vector<double> paid;
  for (const IncentivePaid& i : bill.incentives) paid.push_back(i.amount);
  paid = rounded_to_add_up(paid, price - net, kCent);
  for (std::size_t i = 0; i < paid.size(); ++i) bill.incentives[i].amount = paid[i];
  return bill;
}

}  // namespace underlawn
