// SPDX-License-Identifier: GPL-3.0-or-later
// A loop of twelve circuits on a stepped reverse-return header, the network that EPANET solves too in
// tests/published/epanet; tests/bench/epanet_ratio.mjs times both in one run.
#include <benchmark/benchmark.h>

#include "flow/hydraulics.h"
#include "support/flow_layouts.h"
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

// Twelve circuits on one leg; the sizes of a direct and a reverse return header, and the whole stage.
FlowWishes twelve_wishes(bool reverse) {
  FlowWishes w;
  w.design_flow = w.heat_pump.flow = w.hose_kit.flow = 1.7e-3;
  w.circulator.curve = {{0, 12, 400}, {1e-3, 11, 500}, {3e-3, 5, 600}};
  if (reverse) w.arrangement = HeaderArrangement::reverse_return;
  return w;
}

void header_of_twelve_circuits(benchmark::State& state) {
  const Layout layout = hand_layout(0, 11, true);
  const FlowWishes w = twelve_wishes(state.range(0) != 0);
  for (auto _ : state) benchmark::DoNotOptimize(design_header(layout, {}, w)->mass);
}
BENCHMARK(header_of_twelve_circuits)->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

void stage_of_twelve_circuits(benchmark::State& state) {
  const Layout layout = hand_layout(0, 11, true);
  FlowWishes w = twelve_wishes(true);
  w.run_size = "2 in DR 11";
  w.header_sizes = {"2 in DR 11", "1-1/4 in DR 11"};
  for (auto _ : state) benchmark::DoNotOptimize(solve_flow(layout, {}, w)->volume);
}
BENCHMARK(stage_of_twelve_circuits)->Unit(benchmark::kMicrosecond);

}  // namespace
