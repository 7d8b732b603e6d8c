// SPDX-License-Identifier: GPL-3.0-or-later
// Pipes in a row carry the same flow: a network of branches has fewer unknowns than one of pipes.
#pragma once

#include "flow/network.h"

namespace underlawn {

struct BranchPipe {
  int pipe = 0;
  bool forward = true;  // laid the way the branch goes
};

// From one place where flows part or meet to the next; `pipes` in the order of the flow.
struct Branch {
  int from = 0, to = 0;  // junctions
  std::vector<BranchPipe> pipes;
};

struct Branches {
  std::vector<int> junctions;  // node of each; inlet and outlet always are
  std::vector<Branch> branches;
  int inlet = 0, outlet = 0;  // junctions
};

// Of a network that check_network found sound.
Branches branches_of(const Network& network);

}  // namespace underlawn
