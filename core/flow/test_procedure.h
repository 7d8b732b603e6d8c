// SPDX-License-Identifier: GPL-3.0-or-later
// The ways a loop is tested, as values.
#pragma once

#include "flow/pressure_test.h"

namespace underlawn {

inline constexpr double kPsi = 6894.757293168;     // Pa
inline constexpr double kReboundDrop = 10 * kPsi;  // ASTM F2164 (from memory)
inline constexpr double kReboundTolerance = 0.05;  // of the pressure after the drop; ASTM F2164 (from memory)
inline constexpr double kPumpUp = 60;              // s

// Pump up and close the valve at once. A sound DR 11 loop loses a fifth in half an hour: shown so that nobody
// condemns a sound loop, not to be recommended.
TestProgramme pump_then_shut_in(double pressure, double shut_in = 1800);
// Hold with make-up water, then close the valve. 90 psi for 30 min is the crew's (common practice, no
// source); four hours' hold and an hour shut in is the better one, after ASTM F2164's expansion phase.
TestProgramme hold_then_shut_in(double pressure, double hold = 1800, double shut_in = 1800);
TestProgramme long_hold_then_shut_in(double pressure);
// ASTM F2164 (from memory): 4 h with make-up, let out 10 psi, an hour shut in; passes within 5 %.
TestProgramme rebound_test(double pressure, double drop = kReboundDrop);

}  // namespace underlawn
