// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace underlawn {

// What a person typed, in plain ASCII: primes and curly quotes as ' and ", fraction glyphs as 1/2, dashes as
// -, superscripts as digits, the degree sign as deg. Bytes that are none of these stay as they are.
struct TypedText {
  std::string plain;
  std::vector<int> place;  // of each byte of `plain` and of its end: which character of the original, from 1
};

TypedText typed_text(std::string_view original);

// `text` between quotation marks for a message, cut after about `most` bytes, control characters dropped, and
// always valid UTF-8.
std::string in_quotes(std::string_view text, std::size_t most = 40);

}  // namespace underlawn
