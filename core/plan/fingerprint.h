// SPDX-License-Identifier: GPL-3.0-or-later
// A short mark by which two sheets can be told to be of the same dig.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "plan/plan.h"

namespace underlawn {

// The plan's fields that decide what is dug, one `name=value` line each, in a fixed order, numbers in their
// shortest exact form. In: the site (lot, setbacks, features with kind, shape, clearances, trunk, utility,
// depth and whether they may be crossed; entry point, north, root zone factor, clearance rules), the ground
// and the wishes. Out, since the same holes are dug whatever they say: title block, units shown, accepted
// findings, dimensions, names and notes of features.
std::string canonical_text(const Plan& plan);

// The first 12 hex digits of the 64-bit FNV-1a hash (Fowler, Noll and Vo; offset 14695981039346656037, prime
// 1099511628211) of canonical_text. Two different plans agree by chance once in 2^48.
std::string fingerprint(const Plan& plan);

// FNV-1a of any text.
std::uint64_t fnv1a(std::string_view text);

}  // namespace underlawn
