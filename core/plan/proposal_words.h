// SPDX-License-Identifier: GPL-3.0-or-later
// What the designer says to the homeowner in his own words; what is not said is left out of the proposal.
#pragma once

#include <string>

namespace underlawn {

struct ProposalWords {
  std::string opening;    // a few sentences at its head
  std::string start;      // "in the second half of May"
  std::string guarantee;  // who answers for what, and for how long
  std::string payment;    // "a third on signing, the rest after the pressure test"
  std::string validity;   // how long the offer stands: "30 days"
  bool operator==(const ProposalWords&) const = default;
};

}  // namespace underlawn
