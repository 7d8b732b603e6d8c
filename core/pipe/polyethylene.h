// SPDX-License-Identifier: GPL-3.0-or-later
// How polyethylene pipe gives: to pressure over time, and to temperature.
#pragma once

#include "base/result.h"

namespace underlawn {

// Apparent modulus at 23 C: modulus_one_hour x hours^-exponent, which follows PPI Handbook of PE Pipe, ch. 3,
// table B.1.1 for PE4XXX (82 ksi at half an hour, 29 at 50 years) within 2.5 %.
struct PeCreep {
  double modulus_one_hour = 534e6;  // Pa, > 0
  double exponent = 0.075;          // 0 < exponent < 0.5
  double poisson = 0.45;            // 0 <= poisson < 0.5; PPI Handbook ch. 3, long-term (from memory)
};

// Refuses a modulus outside 1 MPa to 100 GPa, an exponent or a Poisson's ratio outside the ranges above.
Result<void> check_creep(const PeCreep& creep);

double creep_modulus(const PeCreep& creep, double seconds);  // Pa at 23 C, seconds > 0

// Modulus at `temperature` (deg C) over that at 23 C: PPI Handbook ch. 3, appendix B, from memory, on
// straight lines between the printed points. Refused outside -28.9 to 60 C.
Result<double> modulus_multiplier(double temperature);

// c in dV/V = c p/E: growth of the bore of a thick tube under inner pressure p (Lame), held lengthwise by
// soil or by its ties: c = 2(1+nu)[(1-2nu)+k^2]/(k^2-1), k = dr/(dr-2). Ends free makes 0.2 % of difference.
double bore_compliance(double dr, double poisson);

// 1/K lengthwise, when free: 9e-5 in/(in F). PPI Handbook, as quoted by pipe makers; others print to 2.4e-4.
inline constexpr double kPeExpansion = 9e-5 * 1.8;

// Is the pipe free to lengthen, or does soil (or a coil's ties) hold it?
enum class PipeHold { free, held };
// 1/K: growth of the bore's volume with temperature: free 3 alpha, held lengthwise 2(1+nu) alpha.
double bore_expansion(PipeHold hold, double poisson);

}  // namespace underlawn
