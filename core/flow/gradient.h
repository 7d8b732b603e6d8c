// SPDX-License-Identifier: GPL-3.0-or-later
// The global gradient method of Todini & Pilati 1988 on a network that check_network found sound.
#pragma once

#include <vector>

#include "flow/node_equations.h"
#include "flow/pipe_law.h"

namespace underlawn {

class GradientMethod {
 public:
  GradientMethod(const Network& network, const FluidProperties& fluid, double total_flow);

  int run();                                                 // steps taken; 0 where it does not settle
  const std::vector<double>& flow() const { return flow_; }  // m3/s
  const std::vector<Loss>& losses() const { return losses_; }
  double head(int node) const { return equations_.head(node); }  // m, outlet 0

 private:
  double step();
  bool closes() const;
  void go(const std::vector<double>& move, double part);
  double work(const std::vector<double>& move) const;

  const Network& net_;
  double total_;
  std::vector<PipeLaw> laws_;
  std::vector<double> flow_, before_, move_;
  std::vector<Loss> losses_;  // at flow_
  NodeEquations equations_;
  bool balanced_ = false;
};

}  // namespace underlawn
