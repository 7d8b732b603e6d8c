// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace underlawn {

// Bytes of the well-formed UTF-8 character that `text` starts with; 0 where there is none.
std::size_t utf8_size(std::string_view text);

// `text` with every byte that is part of no well-formed character replaced by U+FFFD; `bad` counts them.
std::string valid_utf8(std::string_view text, std::size_t* bad = nullptr);

}  // namespace underlawn
