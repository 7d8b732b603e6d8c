// SPDX-License-Identifier: GPL-3.0-or-later
// Loss factors of fittings: Hooper 1981, Chem. Eng. 88(17):96, K = K1/Re + Kinf (1 + 1/D), D the bore in
// inches.
#pragma once

namespace underlawn {

struct TwoK {
  double k1, k_infinite;
};

// Constants as in the open library "fluids", which quotes Hooper's table.
inline constexpr TwoK kElbow90{800, 0.25};    // standard, welded
inline constexpr TwoK kElbow45{500, 0.20};    // standard
inline constexpr TwoK kTeeAsElbow{800, 0.8};  // into or out of the branch, welded
inline constexpr TwoK kTeeRun{150, 0.05};     // straight through, welded

inline constexpr double kFittingReynolds =
    1e4;  // K is taken as constant at this Re: at 3000 a tee has 0.19 more

// bore m, > 0; reynolds > 0.
inline double fitting_k(TwoK fitting, double bore, double reynolds = kFittingReynolds) {
  return fitting.k1 / reynolds + fitting.k_infinite * (1 + 0.0254 / bore);
}

}  // namespace underlawn
