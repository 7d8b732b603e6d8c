// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/reference_networks.h"

#include <algorithm>

namespace underlawn {
namespace {

constexpr double kRough = 1.5e-6, kCoil = 0.02154, kRun = 0.0486;

}  // namespace

Network header_network(const std::vector<double>& circuits, const std::vector<double>& bores, double run,
                       bool reverse) {
  const int n = static_cast<int>(circuits.size());
  Network net;
  // nodes: 0 house supply, 1..n supply tees, n+1..2n return tees, 2n+1 house return
  net.nodes = 2 * n + 2;
  net.inlet = 0;
  net.outlet = 2 * n + 1;
  net.pipes.push_back({"supply run", 0, 1, run, kRun, kRough, 0, 1.5});
  for (int i = 1; i < n; ++i)
    net.pipes.push_back({"supply header " + std::to_string(i), i, i + 1, 3.66, bores[i], kRough});
  for (int i = 0; i < n; ++i)
    net.pipes.push_back(
        {"circuit " + std::to_string(i + 1), 1 + i, n + 1 + i, circuits[i], kCoil, kRough, 0, 3});
  for (int i = 1; i < n; ++i) {
    const double bore = reverse ? bores[n - i] : bores[i];
    net.pipes.push_back({"return header " + std::to_string(i), n + i, n + i + 1, 3.66, bore, kRough});
  }
  const int last = reverse ? 2 * n : n + 1;
  net.pipes.push_back(
      {"return run", last, 2 * n + 1, run + (reverse ? 3.66 * (n - 1) : 0), kRun, kRough, 0, 1.5});
  return net;
}

std::vector<ReferenceNetwork> reference_networks() {
  const FluidProperties water{999.7, 4192, 0.58, 1.306e-3};  // 10 C
  const FluidProperties thin{978.3, 4163, 0.4855, 2.0e-3};   // near 15 % methanol
  const std::vector<double> equal4(4, 243.84), equal6(6, 200), equal12(12, 150);
  const std::vector<double> unequal = {180, 200, 243.84, 260, 300};
  const std::vector<double> wide12 = {0.0486, 0.0486, 0.0486, 0.0486, 0.0486, 0.0342,
                                      0.0342, 0.0342, 0.0342, 0.0273, 0.0273, 0.0273};
  std::vector<ReferenceNetwork> all;
  all.push_back({"one_circuit", {2, {{"circuit", 0, 1, 250, kCoil, kRough, 0, 2}}, 0, 1}, water, 2.5e-4});
  all.push_back(
      {"four_direct", header_network(equal4, std::vector<double>(4, 0.0342), 25, false), water, 9.5e-4});
  all.push_back(
      {"four_reverse", header_network(equal4, std::vector<double>(4, 0.0342), 25, true), water, 9.5e-4});
  all.push_back(
      {"five_unequal", header_network(unequal, std::vector<double>(5, 0.0342), 40, true), water, 1.2e-3});
  all.push_back(
      {"six_thin_fluid", header_network(equal6, std::vector<double>(6, 0.0342), 15, false), thin, 2.1e-3});
  all.push_back({"twelve_stepped_reverse", header_network(equal12, wide12, 30, true), water, 3.0e-3});
  return all;
}

}  // namespace underlawn
