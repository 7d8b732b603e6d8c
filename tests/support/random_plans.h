// SPDX-License-Identifier: GPL-3.0-or-later
// Plans and files that nobody drew.
#pragma once

#include <random>

#include "plan/plan.h"

namespace underlawn::sample {

// Any plan the types can hold, sound or not: odd numbers, odd names, features of every kind. Ids rise from 1.
Plan random_plan(std::mt19937_64& random);

// `text` with a few bytes changed, removed, doubled or swapped for pieces of JSON.
std::string mutated(std::string text, std::mt19937_64& random);

}  // namespace underlawn::sample
