// SPDX-License-Identifier: GPL-3.0-or-later
// Texts spoiled at random, for readers that must refuse and never crash.
#pragma once

#include <random>
#include <string>

namespace underlawn {

// `text` with one to six changes: bytes changed, taken out, put in or doubled, stretches moved or lost, the
// end cut off, numbers replaced by odd ones. The same for the same state of `random`.
std::string mutated(std::string text, std::mt19937& random);

}  // namespace underlawn
