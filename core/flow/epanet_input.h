// SPDX-License-Identifier: GPL-3.0-or-later
// The network as an input file of EPANET (US EPA, public domain), so that others can check it.
#pragma once

#include <string>

#include "flow/network.h"

namespace underlawn {

// Darcy-Weisbach, litres a second, metres. The flow enters at the inlet as a negative demand; the outlet is a
// reservoir at head 0. EPANET knows no coiled pipe: a coil's extra friction is given as a minor loss at the
// flow that `at` found, and a comment says so.
std::string epanet_input(const Network& network, const FluidProperties& fluid, const NetworkFlow& at,
                         const std::string& title);

}  // namespace underlawn
