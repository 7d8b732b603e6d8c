// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/utf8.h"

namespace underlawn {

namespace {

// Unicode 15, table 3-7: lead bytes with the range of the byte behind them; further bytes are 80..BF.
struct Lead {
  unsigned char first, last;
  std::size_t size;
  unsigned char low, high;
};
constexpr Lead kLeads[] = {
    {0x00, 0x7F, 1, 0, 0},       {0xC2, 0xDF, 2, 0x80, 0xBF}, {0xE0, 0xE0, 3, 0xA0, 0xBF},
    {0xE1, 0xEC, 3, 0x80, 0xBF}, {0xED, 0xED, 3, 0x80, 0x9F}, {0xEE, 0xEF, 3, 0x80, 0xBF},
    {0xF0, 0xF0, 4, 0x90, 0xBF}, {0xF1, 0xF3, 4, 0x80, 0xBF}, {0xF4, 0xF4, 4, 0x80, 0x8F},
};

bool in_range(char c, unsigned char low, unsigned char high) {
  const auto byte = static_cast<unsigned char>(c);
  return byte >= low && byte <= high;
}

}  // namespace

std::size_t utf8_size(std::string_view text) {
  if (text.empty()) return 0;
  for (const Lead& lead : kLeads) {
    if (!in_range(text[0], lead.first, lead.last)) continue;
    if (lead.size > text.size()) return 0;
    if (lead.size > 1 && !in_range(text[1], lead.low, lead.high)) return 0;
    for (std::size_t i = 2; i < lead.size; ++i)
      if (!in_range(text[i], 0x80, 0xBF)) return 0;
    return lead.size;
  }
  return 0;
}

std::string valid_utf8(std::string_view text, std::size_t* bad) {
  std::string valid;
  valid.reserve(text.size());
  std::size_t count = 0;
  while (!text.empty()) {
    const std::size_t size = utf8_size(text);
    if (size == 0) {
      valid += "\uFFFD";
      ++count;
    } else {
      valid += text.substr(0, size);
    }
    text.remove_prefix(size == 0 ? 1 : size);
  }
  if (bad != nullptr) *bad = count;
  return valid;
}

}  // namespace underlawn
