// SPDX-License-Identifier: GPL-3.0-or-later
// The step response of pipes in the ground is one integral over u = 1/sqrt(4 a t'), t' the age of the heat:
//
//     k R(t) = 1/(2 pi^1.5 L) * integral over u from 1/sqrt(4 a t) to infinity of  K(u) du
//     K(u)   = double integral over all pipe of  exp(-u^2 r^2) - exp(-u^2 r'^2)  ds ds'
//
// (r to the source, r' to its image above the ground), which is the continuous point source of Carslaw &
// Jaeger, Conduction of Heat in Solids, 2nd ed., 10.2, with erfc(r U)/r = 2/sqrt(pi) * integral from U of
// exp(-r^2 u^2) du. K is needed only at fixed nodes of ln u and depends on geometry alone: every time, k and
// a is then an interpolation.
#pragma once

#include <array>
#include <cmath>

namespace underlawn {

inline constexpr int kKernelNodes = 60;
inline constexpr double kFirstNode = 0.004;  // 1/m: ages beyond a thousand years
inline constexpr double kNodeStep = 0.2;     // in ln u: the last node, 534 1/m, sees only the pipe's own wall

using KernelTable = std::array<double, kKernelNodes>;  // m2, K or a part of it at each node

inline double kernel_node(int i) {  // 1/m
  static const KernelTable nodes = [] {
    KernelTable out{};
    for (int n = 0; n < kKernelNodes; ++n) out[n] = kFirstNode * std::exp(kNodeStep * n);
    return out;
  }();
  return nodes[i];
}

// exp(-x) is nothing beyond this: 1e-13.
inline constexpr double kGone = 30;

}  // namespace underlawn
