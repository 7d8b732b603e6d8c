// SPDX-License-Identifier: GPL-3.0-or-later
// A network made ready once - rows of pipes drawn together, the order of elimination, what of the law of
// friction depends on pipe and fluid alone - and solved for many flows, each from the one before.
#pragma once

#include "flow/branches.h"
#include "flow/node_equations.h"
#include "flow/pipe_law.h"

namespace underlawn {

class NetworkSolver {
 public:
  // Refuses what check_network refuses. The network may go away afterwards.
  static Result<NetworkSolver> of(const Network& network, const FluidProperties& fluid);

  // Flows and heads when `total_flow` (m3/s) enters at the inlet: the global gradient method (Todini & Pilati
  // 1988), each step sharpened by the losses' higher derivatives, to a node imbalance below 1e-12 of the
  // total flow and a head error around every path below 1e-10 of the loss. Refuses a flow not positive.
  Result<void> solve(double total_flow);
  // Forgets the flow before: the next solve starts from how the pipes share by Blasius's law.
  void restart() { total_ = 0; }

  // Of the last solve:
  double flow(std::size_t pipe) const;      // m3/s, signed
  double velocity(std::size_t pipe) const;  // m/s, >= 0
  double head_loss() const { return head_[net_.inlet]; }
  double head_loss(std::size_t pipe) const;  // m, signed as the flow, by Churchill or the coil's law
  int iterations() const { return iterations_; }
  NetworkFlow all() const;

 private:
  struct Pipe {
    int from, to, branch;
    double sign;            // of the branch's flow
    double area, reynolds;  // m2; per m3/s
    PipeLaw law;
  };
  struct Sum {
    double head, slope, curve, twist;
  };
  NetworkSolver(const Network& network, const FluidProperties& fluid);
  void share_by_blasius();
  void start(double total);
  bool run();
  void find_heads();
  double find_moves();
  void sharpen(double most);
  void lose();
  void go(double part);
  double work() const;
  double worst_node() const;

  Branches net_;
  int nodes_, inlet_, outlet_;
  std::vector<Pipe> pipes_;
  std::vector<int> in_order_;   // pipes, branch by branch
  std::vector<double> calm_;    // of each branch, m3/s
  std::vector<double> shares_;  // of the total flow, by Blasius's law
  NodeEquations equations_;
  double total_ = 0;
  std::vector<double> flow_, before_, straight_, move_, conductance_;  // of branches
  std::vector<Sum> loss_;                                              // at flow_
  std::vector<double> head_, more_;                                    // of junctions
  bool gentle_ = false;
  int iterations_ = 0;
};

}  // namespace underlawn
