// SPDX-License-Identifier: GPL-3.0-or-later
// The global gradient method of Todini & Pilati 1988 on a network that check_network found sound.
#pragma once

#include <memory>
#include <vector>

#include "flow/pipe_law.h"

namespace underlawn {

class GradientMethod {
 public:
  GradientMethod(const Network& network, const FluidProperties& fluid, double total_flow);
  ~GradientMethod();

  int run();                                                 // steps taken; 0 where it does not settle
  const std::vector<double>& flow() const { return flow_; }  // m3/s
  const std::vector<Loss>& losses() const { return losses_; }
  double head(int node) const;  // m, outlet 0

 private:
  class Equations;
  double step();
  void go(const std::vector<double>& move, double part);
  double work(const std::vector<double>& move) const;

  const Network& net_;
  double total_;
  std::vector<PipeLaw> laws_;
  std::vector<double> flow_, before_, move_;
  std::vector<Loss> losses_;  // at flow_
  std::unique_ptr<Equations> equations_;
  bool balanced_ = false;
};

}  // namespace underlawn
