// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/catalogues.h"

#include <algorithm>
#include <cstdint>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace underlawn::test {

namespace {

constexpr std::string_view kOpen = "\u27e6", kClose = "\u27e7";

void put(std::string& bytes, std::size_t value, bool turned) {
  for (int i = 0; i < 4; ++i) bytes += static_cast<char>((value >> (8 * (turned ? 3 - i : i))) & 0xff);
}

std::uint32_t word(const std::string& bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (int i = 3; i >= 0; --i)
    value = value << 8 | static_cast<unsigned char>(bytes.at(at + static_cast<std::size_t>(i)));
  return value;
}

bool letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// Every text of the catalogue at `path` as its English between brackets, as `within` writes it there.
template <class Within>
Catalogue marked(const std::string& path, const Within& within) {
  std::ifstream file(path, std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(file), {}};
  std::map<std::string, std::string> texts;
  for (const auto& [key, text] : mo_texts(bytes))
    if (!key.empty())
      texts[key] = std::string(kOpen) + within(key.substr(key.find('\4') + 1)) + std::string(kClose);
  auto made = Catalogue::read(mo_file(texts));
  if (!made) throw std::runtime_error(made.error().message());
  return std::move(*made);
}

}  // namespace

std::string mo_file(const std::map<std::string, std::string>& texts, bool turned) {
  const std::size_t n = texts.size(), keys = 28, values = keys + 8 * n;
  std::string head, key_table, value_table, key_bytes, value_bytes;
  std::size_t all_keys = 0;
  for (const auto& [key, value] : texts) all_keys += key.size() + 1;
  for (const auto& [key, value] : texts) {
    put(key_table, key.size(), turned);
    put(key_table, values + 8 * n + key_bytes.size(), turned);
    put(value_table, value.size(), turned);
    put(value_table, values + 8 * n + all_keys + value_bytes.size(), turned);
    key_bytes += key + '\0';
    value_bytes += value + '\0';
  }
  for (std::size_t v : {std::size_t{0x950412de}, std::size_t{0}, n, keys, values, std::size_t{0}, values})
    put(head, v, turned);
  return head + key_table + value_table + key_bytes + value_bytes;
}

std::map<std::string, std::string> mo_texts(const std::string& bytes) {
  std::map<std::string, std::string> texts;
  const std::size_t n = word(bytes, 8), keys = word(bytes, 12), values = word(bytes, 16);
  const auto text = [&](std::size_t table, std::size_t i) {
    return bytes.substr(word(bytes, table + 8 * i + 4), word(bytes, table + 8 * i));
  };
  for (std::size_t i = 0; i < n; ++i) texts[text(keys, i)] = text(values, i);
  return texts;
}

const Catalogue& marking_language(const std::string& path) {
  static const Catalogue language = marked(path, [](const std::string& english) { return english; });
  return language;
}

const Catalogue& marking_around_holes(const std::string& path) {
  static const Catalogue language = marked(path, [](std::string english) {
    for (std::size_t at = 0; (at = english.find("{}", at)) != std::string::npos;) {
      english.replace(at, 2, std::string(kClose) + "{}" + std::string(kOpen));
      at += kClose.size() + 2 + kOpen.size();
    }
    return english;
  });
  return language;
}

void Unsaid::read(std::string_view text) {
  std::size_t begin = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i < text.size() && depth_ == 0 && letter(text[i])) continue;
    if (depth_ == 0 && i > begin) add(text.substr(begin, i - begin));
    if (text.substr(std::min(i, text.size())).starts_with(kOpen)) ++depth_;
    if (text.substr(std::min(i, text.size())).starts_with(kClose)) depth_ = std::max(0, depth_ - 1);
    begin = i + 1;
  }
}

void Unsaid::add(std::string_view word) {
  if (word.size() < 2) return;
  if (std::ranges::find(words_, word) == words_.end()) words_.emplace_back(word);
}

}  // namespace underlawn::test
