// SPDX-License-Identifier: GPL-3.0-or-later
// What the designer typed himself and a proposal prints as it was typed, whatever language the sheet is in.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"

namespace underlawn {

// What of it is typed, so that the language spoken here does not have it: "Guarantee", "names on the lot".
std::vector<std::string> typed_in_proposal(const Plan& plan);

// Of these, what reads as if it were in another of our languages than `language`, by its small words; short
// names without any are not told.
std::vector<std::string> typed_in_another_language(const Plan& plan, const std::string& language);

}  // namespace underlawn
