// SPDX-License-Identifier: GPL-3.0-or-later
// Small things that sentences are made of, in whatever language is spoken: lists and first letters.
#pragma once

#include <string>
#include <vector>

namespace underlawn {

std::string joined(const std::vector<std::string>& names);      // "1, 2, 3"
std::string joined_and(const std::vector<std::string>& names);  // "1, 2 and 3"
std::string joined_and(const std::vector<int>& numbers);

// The text with its first letter large or small: A to Z and what Spanish puts marks on ("Árbol", "árbol").
std::string capitalised(std::string text);
std::string uncapitalised(std::string text);

}  // namespace underlawn
