// SPDX-License-Identifier: GPL-3.0-or-later
// One pipe's head against its flow, and the derivatives.
#pragma once

#include "flow/network.h"

namespace underlawn {

struct Loss {
  double head = 0;      // m, signed
  double slope = 0;     // m per m3/s, > 0
  double curve = 0;     // half the second derivative, m per (m3/s)2, signed; good where gentle
  double twist = 0;     // a sixth of the third, m per (m3/s)3; the same
  bool gentle = false;  // no change of regime is near
};

class PipeLaw {
 public:
  PipeLaw(const NetPipe& pipe, const FluidProperties& fluid);
  // Below 1e-12 m3/s either way the line through nothing.
  Loss at(double flow) const;
  // m3/s: a move of the flow is small where it is small beside this or the flow; head is straight below it.
  double calm() const { return coil_diameter_ > 0 ? 1e-12 : 200 / reynolds_; }

 private:
  double reynolds_;  // per m3/s
  double head_;      // m per (m3/s)2 and unit of f L/d + K
  double slender_;   // L/d
  double fittings_;
  double roughness_;  // relative
  double bore_, coil_diameter_;
};

}  // namespace underlawn
