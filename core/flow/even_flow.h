// SPDX-License-Identifier: GPL-3.0-or-later
// A loop's balance and head guessed from even flows, for many sizes of its header at once.
#pragma once

#include <vector>

#include "flow/loop_network.h"

namespace underlawn {

// One network of the same pipes for each size, header, run and leads all of that size.
struct SizedLoops {
  std::vector<PipeSize> sizes;     // narrowest first
  std::vector<LoopNetwork> loops;  // as sizes
  std::vector<int> group;  // of each pipe: the group of header steps it is sized with; -1 none, -2 run
  int groups = 0;          // from the run outwards
  // The network with these sizes (indices) of run and groups.
  LoopNetwork with(int run, const std::vector<int>& header) const;
};

// What a loop does when every circuit takes the same flow.
class EvenFlow {
 public:
  // `spread`: the difference of circuits' flows, relative, over which the slopes of their losses are taken,
  // for those bend between laminar and turbulent.
  EvenFlow(const SizedLoops& all, const FluidProperties& fluid, double total_flow, double spread);

  // m added to the way of each circuit by a group of this size.
  const std::vector<double>& way(int group, int size) const { return ways_[group][size]; }
  const std::vector<double>& coils() const { return coils_; }  // m of each circuit alone
  double heat_pump() const { return heat_pump_; }              // m, hose kit and valves included
  // (most - least)/mean flow to first order: heads of the ways over the slope of a circuit's loss. Heads of
  // the header itself give way too, so it is a little much.
  double imbalance(const std::vector<double>& ways) const;
  // m, of the circuits' mean: what a group of this size adds, and the circuits alone.
  double mean_way(int group, int size) const { return mean_ways_[group][size]; }
  double mean_coil() const { return mean_coil_; }
  // The same by one step of Newton's method, where the header gives way too. `ways` as the groups of `header`
  // add up. Only where has_refined().
  double refined_imbalance(const std::vector<double>& ways, const std::vector<int>& header) const;
  bool has_refined() const { return !shared_.empty(); }
  // m: heat pump, run and the mean of the ways.
  double head(int run_size, double mean_way) const { return runs_[run_size] + mean_way; }

 private:
  void share(const SizedLoops& all, const FluidProperties& fluid, const std::vector<std::vector<int>>& users);

  std::vector<std::vector<std::vector<double>>> ways_;    // [group][size][circuit]
  std::vector<std::vector<std::vector<double>>> shared_;  // [group][size][circuit * circuits + circuit]:
                                                          // slopes of what both go through
  std::vector<std::vector<double>> mean_ways_;            // [group][size]
  std::vector<double> coils_, slopes_, runs_;
  std::vector<double> shares_;  // of each circuit, 1/slope over `conductance_`, the sum of those
  double heat_pump_ = 0, mean_coil_ = 0, conductance_ = 0;
  double each_;  // m3/s
};

}  // namespace underlawn
