// SPDX-License-Identifier: GPL-3.0-or-later
// Friction and heat transfer of the fluid in a pipe. Darcy's factor f everywhere: dp = f (L/d) rho v^2/2.
#pragma once

namespace underlawn {

enum class Regime { still, laminar, transition, turbulent };
// Laminar to Re 2000, uncertain by a quarter to 4000, turbulent above.
Regime regime_of(double reynolds);

// Churchill 1977, Chem. Eng. 84(24):91: all regimes, Re > 0; `roughness` relative to the bore.
double friction_factor(double reynolds, double roughness = 0);

// A smooth pipe of bore d coiled on a (centre line) diameter D rubs more and stays laminar longer (Ito's
// critical Re is 2e4 (d/D)^0.32). The larger of laminar 64/Re x Manlapaz & Churchill 1981 (from memory) and
// turbulent Ito 1959, 0.304 Re^-0.25 + 0.029 sqrt(d/D): they meet near the critical Re, so head rises with
// flow without a jump.
double coil_friction_factor(double reynolds, double bore, double coil_diameter);

// The same two with what Newton's method asks for: the slope d ln f/d ln Re, its own slope `bend` and the
// slope of that, `twist`. The last two are good where `gentle`: away from the changes of regime, where no
// short step meets one.
struct Friction {
  double factor = 0, slope = 0, bend = 0, twist = 0;
  bool gentle = false;
};
Friction friction_at(double reynolds, double roughness = 0);
Friction coil_friction_at(double reynolds, double bore, double coil_diameter);

// Nusselt number of developed flow: 3.66 to Re 2300, Gnielinski 1976 from 4000 with f as given, linear
// between (Gnielinski 2013). prandtl 0.5..2000.
double nusselt(double reynolds, double prandtl, double friction);
// Gnielinski 1976 alone; Re 2300..5e6.
double gnielinski(double reynolds, double prandtl, double friction);

// m K/W from the outside of the pipe's wall to the fluid: ln(do/di)/(2 pi k) + 1/(pi di h).
double fluid_resistance(double outside_diameter, double bore, double pipe_conductivity,
                        double film_coefficient);
inline constexpr double kPolyethyleneConductivity =
    0.389;  // W/(m K), Geothermal Energy 2015, s40517-015-0029-1, table 1

}  // namespace underlawn
