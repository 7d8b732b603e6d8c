// SPDX-License-Identifier: GPL-3.0-or-later
// Loop networks that are also solved by EPANET; see tests/published/epanet.
#pragma once

#include <string>
#include <vector>

#include "flow/network.h"

namespace underlawn {

struct ReferenceNetwork {
  std::string name;
  Network network;
  FluidProperties fluid;
  double flow = 0;  // m3/s
};

// A header of `sizes[i]` bores, one step a circuit; direct or reverse return.
Network header_network(const std::vector<double>& circuits, const std::vector<double>& bores, double run,
                       bool reverse);

std::vector<ReferenceNetwork> reference_networks();

}  // namespace underlawn
