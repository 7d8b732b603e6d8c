// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_procedure.h"

#include "base/say.h"

namespace underlawn {

TestProgramme pump_then_shut_in(double pressure, double shut_in) {
  return {say("Pump up and shut in"),
          {{PhaseKind::pump, kPumpUp, pressure}, {PhaseKind::shut_in, shut_in, 0}}};
}

TestProgramme hold_then_shut_in(double pressure, double hold, double shut_in) {
  return {
      say("Hold with make-up, then shut in"),
      {{PhaseKind::pump, kPumpUp, pressure}, {PhaseKind::hold, hold, 0}, {PhaseKind::shut_in, shut_in, 0}}};
}

TestProgramme long_hold_then_shut_in(double pressure) {
  return hold_then_shut_in(pressure, 4 * 3600, 3600);
}

TestProgramme rebound_test(double pressure, double drop) {
  return {say("Rebound after ASTM F2164"),
          {{PhaseKind::pump, kPumpUp, pressure},
           {PhaseKind::hold, 4 * 3600, 0},
           {PhaseKind::pump, kPumpUp, pressure - drop},
           {PhaseKind::shut_in, 3600, 0}}};
}

}  // namespace underlawn
