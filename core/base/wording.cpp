// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/wording.h"

#include "base/say.h"

namespace underlawn {

namespace {

constexpr char kLatin =
    '\xC3';  // first byte of U+00C0 to U+00FF in UTF-8; small letters lie 0x20 above large ones

// Where the letter stands that may change, and whether it is one of those from `first` to `last`.
char* first_letter(std::string& text, char first, char last, char marked_first, char marked_last) {
  if (!text.empty() && text[0] >= first && text[0] <= last) return text.data();
  const bool marked =
      text.size() > 1 && text[0] == kLatin && text[1] >= marked_first && text[1] <= marked_last;
  return marked ? text.data() + 1 : nullptr;
}

}  // namespace

std::string joined(const std::vector<std::string>& names) {
  std::string all;
  for (std::size_t i = 0; i < names.size(); ++i) all += (i == 0 ? "" : ", ") + names[i];
  return all;
}

std::string joined_and(const std::vector<std::string>& names) {
  if (names.size() < 2) return joined(names);
  return say("{} and {}", joined({names.begin(), names.end() - 1}), names.back());
}

std::string joined_and(const std::vector<int>& numbers) {
  std::vector<std::string> names;
  names.reserve(numbers.size());
  for (int n : numbers) names.push_back(std::to_string(n));
  return joined_and(names);
}

std::string capitalised(std::string text) {
  if (char* letter = first_letter(text, 'a', 'z', '\xA0', '\xBE'))
    *letter = static_cast<char>(*letter - 0x20);
  return text;
}

std::string uncapitalised(std::string text) {
  if (char* letter = first_letter(text, 'A', 'Z', '\x80', '\x9E'))
    *letter = static_cast<char>(*letter + 0x20);
  return text;
}

}  // namespace underlawn
