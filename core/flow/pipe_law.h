// SPDX-License-Identifier: GPL-3.0-or-later
// One pipe's head against its flow, with the slope.
#pragma once

#include "flow/network.h"

namespace underlawn {

struct Loss {
  double head = 0;   // m, signed
  double slope = 0;  // m per m3/s, > 0
};

class PipeLaw {
 public:
  PipeLaw(const NetPipe& pipe, const FluidProperties& fluid);
  // Below 1e-12 m3/s either way the line through nothing.
  Loss at(double flow) const;

 private:
  double reynolds_;  // per m3/s
  double head_;      // m per (m3/s)2 and unit of f L/d + K
  double slender_;   // L/d
  double fittings_;
  double roughness_;  // relative
  double bore_, coil_diameter_;
};

}  // namespace underlawn
