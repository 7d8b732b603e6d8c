// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/pipe_law.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace underlawn {

PipeLaw::PipeLaw(const NetPipe& p, const FluidProperties& fluid) {
  const double area = std::numbers::pi / 4 * p.bore * p.bore;
  reynolds_ = p.bore * fluid.density / (area * fluid.viscosity);
  head_ = 1 / (area * area * 2 * kGravity);
  slender_ = p.length / p.bore;
  fittings_ = p.fittings;
  roughness_ = p.roughness / p.bore;
  bore_ = p.bore;
  coil_diameter_ = p.coil_diameter;
}

Loss PipeLaw::at(double flow) const {
  const double q = std::max(std::abs(flow), 1e-12), re = reynolds_ * q;
  const Friction f =
      coil_diameter_ > 0 ? coil_friction_at(re, bore_, coil_diameter_) : friction_at(re, roughness_);
  const double rub = f.factor * slender_, each = head_ * q, power = 2 + f.slope, square = power * (power - 1);
  return {each * (rub + fittings_) * flow, each * (2 * fittings_ + rub * power),
          std::copysign(head_ * (fittings_ + 0.5 * rub * (square + f.bend)), flow),
          head_ * rub / (6 * q) * (square * (power - 2) + 3 * f.bend * (power - 1) + f.twist), f.gentle};
}

}  // namespace underlawn
