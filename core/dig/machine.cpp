// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/machine.h"

namespace underlawn {

double loose_rate(const Machine& machine) {
  return machine.bucket * machine.fill * machine.efficiency / machine.cycle;
}

double bank_rate(const Machine& machine, double swell) {
  return loose_rate(machine) / (1 + swell);
}

}  // namespace underlawn
