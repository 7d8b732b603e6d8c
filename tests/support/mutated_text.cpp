// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/mutated_text.h"

#include <algorithm>

namespace underlawn {
namespace {

constexpr const char* kOdd[] = {"nan",
                                "-inf",
                                "1e999",
                                "99.9",
                                "",
                                ",",
                                ";",
                                "\t",
                                "\r",
                                "\n",
                                "-",
                                "\"",
                                "#",
                                "=",
                                "1,5",
                                "0x1p3",
                                "\xFF",
                                "\xC3\xA9",
                                "99999999999999999999",
                                "--1",
                                "1e-400",
                                "24",
                                "29",
                                "\r\n\r\n"};

std::size_t below(std::size_t n, std::mt19937& random) {
  return n == 0 ? 0 : random() % n;
}

void change(std::string& text, std::mt19937& random) {
  const std::size_t at = below(text.size() + 1, random), size = below(text.size() - at + 1, random);
  const std::size_t few = std::min<std::size_t>(size, 1 + below(30, random));
  switch (random() % 8) {
    case 0:
      if (at < text.size()) text[at] = static_cast<char>(random());
      break;
    case 1:
      text.erase(at, few);
      break;
    case 2:
      text.insert(at, kOdd[below(std::size(kOdd), random)]);
      break;
    case 3:
      text.insert(at, text.substr(at, few));
      break;
    case 4:
      if (random() % 8 == 0) text.resize(at);
      break;
    case 5:
      if (random() % 8 == 0) text.erase(at, size);
      break;
    case 6:
      std::reverse(text.begin() + static_cast<std::ptrdiff_t>(at),
                   text.begin() + static_cast<std::ptrdiff_t>(at + few));
      break;
    default:
      text.replace(at, few, kOdd[below(std::size(kOdd), random)]);
  }
}

}  // namespace

std::string mutated(std::string text, std::mt19937& random) {
  for (auto changes = 1 + random() % 6; changes > 0; --changes) change(text, random);
  return text;
}

}  // namespace underlawn
