// SPDX-License-Identifier: GPL-3.0-or-later
// A loop of twelve circuits on a stepped reverse-return header, the network that EPANET solves too in
// tests/published/epanet; tests/bench/epanet_ratio.mjs times both in one run.
#include <benchmark/benchmark.h>

#include "flow/hydraulics.h"
#include "flow/network_solver.h"
#include "support/flow_layouts.h"
#include "support/reference_networks.h"

namespace {

using namespace underlawn;

void twelve_circuits_whole(benchmark::State& state) {
  const ReferenceNetwork r = reference_networks().back();
  for (auto _ : state) benchmark::DoNotOptimize(solve_network(r.network, r.fluid, r.flow)->head_loss);
}
BENCHMARK(twelve_circuits_whole)->Unit(benchmark::kMicrosecond);

void twelve_circuits_first(benchmark::State& state) {
  const ReferenceNetwork r = reference_networks().back();
  NetworkSolver solver = NetworkSolver::of(r.network, r.fluid).value();
  for (auto _ : state) {
    solver.restart();
    benchmark::DoNotOptimize(solver.solve(r.flow).has_value());
  }
  state.counters["steps"] = solver.iterations();
}
BENCHMARK(twelve_circuits_first)->Unit(benchmark::kMicrosecond);

void twelve_circuits_again(benchmark::State& state) {
  const ReferenceNetwork r = reference_networks().back();
  NetworkSolver solver = NetworkSolver::of(r.network, r.fluid).value();
  bool more = false;
  for (auto _ : state) benchmark::DoNotOptimize(solver.solve((more = !more) ? 3.1e-3 : 3.0e-3).has_value());
  state.counters["steps"] = solver.iterations();
}
BENCHMARK(twelve_circuits_again)->Unit(benchmark::kMicrosecond);

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

void header_of_many_circuits(benchmark::State& state) {
  const int circuits = static_cast<int>(state.range(0));
  const Layout layout = hand_layout(0, circuits - 1, true);
  FlowWishes w = twelve_wishes(false);
  w.design_flow = w.heat_pump.flow = w.hose_kit.flow = 1.4e-4 * circuits;
  for (auto _ : state) benchmark::DoNotOptimize(design_header(layout, {}, w)->mass);
}
BENCHMARK(header_of_many_circuits)->Arg(4)->Arg(40)->Arg(200)->Unit(benchmark::kMicrosecond);

void stage_of_twelve_circuits(benchmark::State& state) {
  const Layout layout = hand_layout(0, 11, true);
  FlowWishes w = twelve_wishes(true);
  w.run_size = "2 in DR 11";
  w.header_sizes = {"2 in DR 11", "1-1/4 in DR 11"};
  for (auto _ : state) benchmark::DoNotOptimize(solve_flow(layout, {}, w)->volume);
}
BENCHMARK(stage_of_twelve_circuits)->Unit(benchmark::kMicrosecond);

}  // namespace
