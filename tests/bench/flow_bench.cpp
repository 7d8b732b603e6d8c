// SPDX-License-Identifier: GPL-3.0-or-later
// A loop of twelve circuits on a stepped reverse-return header, the network that EPANET solves too in
// tests/published/epanet; tests/bench/epanet_ratio.mjs times both in one run.
#include <benchmark/benchmark.h>

#include "support/reference_networks.h"

namespace {

using namespace underlawn;

void flow_of_twelve_circuits(benchmark::State& state) {
  const ReferenceNetwork r = reference_networks().back();
  int iterations = 0;
  for (auto _ : state) {
    const auto flow = solve_network(r.network, r.fluid, r.flow);
    benchmark::DoNotOptimize(flow->head_loss);
    iterations = flow->iterations;
  }
  state.counters["steps"] = iterations;
}
BENCHMARK(flow_of_twelve_circuits)->Unit(benchmark::kMicrosecond);

}  // namespace
