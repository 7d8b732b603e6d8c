// SPDX-License-Identifier: GPL-3.0-or-later
// The loop as a network of pipes: which way the fluid goes and what head it takes.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "pipe/fluid.h"
#include "pipe/friction.h"

namespace underlawn {

inline constexpr double kGravity = 9.80665;  // m/s2

// A pipe between two nodes. Head loss h = (f L/d + K) v^2/2g, f by Churchill, in a coil by
// coil_friction_factor.
struct NetPipe {
  std::string name;
  int from = 0, to = 0;  // nodes; flow from `from` to `to` is positive
  double length = 0;     // m, > 0
  double bore = 0;       // m, > 0
  double roughness =
      0;  // m, absolute; 1.5e-6 for polyethylene (Colebrook-White, PPI Handbook ch. 6, from memory)
  double coil_diameter = 0;  // m of the centre line; 0 where the pipe is straight
  double fittings = 0;       // sum of K
};

struct Network {
  int nodes = 0;
  std::vector<NetPipe> pipes;
  int inlet = 0, outlet = 1;  // where the house's pump pushes in and takes out
};

struct PipeFlow {
  double flow = 0;      // m3/s, signed
  double velocity = 0;  // m/s, >= 0
  double reynolds = 0;
  Regime regime = Regime::still;
  double head_loss = 0;  // m, signed as the flow
};

struct NetworkFlow {
  std::vector<PipeFlow> pipes;
  std::vector<double> head;  // m at each node, outlet 0
  double total_flow = 0;     // m3/s
  double head_loss = 0;      // m from inlet to outlet
  int iterations = 0;
  double residual = 0;  // largest imbalance of a node, relative to the total flow
};

// Refuses: no pipes, a node out of range, a pipe of no length or bore, nodes that hang on nothing, no way
// from inlet to outlet, flow not positive.
Result<void> check_network(const Network& network);

// Flows and heads when `total_flow` (m3/s) enters at the inlet, by NetworkSolver; for more than one flow of
// the same network keep one of those.
Result<NetworkFlow> solve_network(const Network& network, const FluidProperties& fluid, double total_flow);

// Head loss of one pipe at a flow, m, signed.
double head_loss(const NetPipe& pipe, const FluidProperties& fluid, double flow);

// (most - least)/mean of the given pipes' flows: how far circuits are out of balance.
double imbalance(const NetworkFlow& flow, const std::vector<int>& pipes);

}  // namespace underlawn
