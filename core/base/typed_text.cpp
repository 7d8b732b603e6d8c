// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/typed_text.h"

#include <utility>

namespace underlawn {

namespace {

constexpr std::pair<std::string_view, std::string_view> kPlain[] = {
    {"''", "\""},    {"′", "'"},      {"’", "'"},   {"‘", "'"},    {"´", "'"},    {"ʹ", "'"},
    {"″", "\""},     {"”", "\""},     {"“", "\""},  {"ʺ", "\""},   {"′′", "\""},  {"½", "1/2"},
    {"¼", "1/4"},    {"¾", "3/4"},    {"⅛", "1/8"}, {"⅜", "3/8"},  {"⅝", "5/8"},  {"⅞", "7/8"},
    {"⅓", "1/3"},    {"⅔", "2/3"},    {"⁄", "/"},   {"−", "-"},    {"–", "-"},    {"‑", "-"},
    {"—", "-"},      {"×", "*"},      {"·", "*"},   {"⋅", "*"},    {"÷", "/"},    {"²", "2"},
    {"³", "3"},      {"°", "deg"},    {"º", "deg"}, {"℃", "degC"}, {"℉", "degF"}, {"\u00a0", " "},
    {"\u2009", " "}, {"\u202f", " "}, {"\t", " "},
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool continues_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0) == 0x80;
}

// The longest row that the text starts with.
const std::pair<std::string_view, std::string_view>* row_for(std::string_view text) {
  const std::pair<std::string_view, std::string_view>* best = nullptr;
  for (const auto& row : kPlain)
    if (text.starts_with(row.first) && (best == nullptr || row.first.size() > best->first.size()))
      best = &row;
  return best;
}

int characters(std::string_view text) {
  int count = 0;
  for (char c : text)
    if (!continues_character(c)) ++count;
  return count;
}

// Bytes of the well-formed UTF-8 character that `text` starts with; 0 where there is none.
std::size_t well_formed(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text[0]);
  const std::size_t size = lead < 0x80                   ? 1
                           : lead >= 0xC2 && lead < 0xE0 ? 2
                           : lead >= 0xE0 && lead < 0xF0 ? 3
                           : lead >= 0xF0 && lead < 0xF5 ? 4
                                                         : 0;
  if (size == 0 || size > text.size()) return 0;
  for (std::size_t i = 1; i < size; ++i)
    if (!continues_character(text[i])) return 0;
  const auto second = size > 1 ? static_cast<unsigned char>(text[1]) : 0;
  const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
  const bool beyond = (lead == 0xED && second > 0x9F) || (lead == 0xF4 && second > 0x8F);
  return overlong || beyond ? 0 : size;
}

}  // namespace

TypedText typed_text(std::string_view original) {
  TypedText typed;
  int place = 1;
  for (std::size_t i = 0; i < original.size();) {
    const auto* row = row_for(original.substr(i));
    const std::string_view from = row ? row->first : original.substr(i, 1);
    const std::string_view to = row ? row->second : from;
    // 3½ is three and a half, not thirty-one halves.
    const bool fraction = row && to.size() == 3 && is_digit(to[0]);
    if (fraction && !typed.plain.empty() && is_digit(typed.plain.back())) {
      typed.plain += ' ';
      typed.place.push_back(place);
    }
    typed.plain += to;
    typed.place.insert(typed.place.end(), to.size(), place);
    place += characters(from);
    i += from.size();
  }
  typed.place.push_back(place);
  return typed;
}

std::string quoted(std::string_view text) {
  constexpr std::size_t kMost = 40;
  std::string clean;
  std::size_t i = 0;
  while (i < text.size() && clean.size() < kMost) {
    const std::size_t size = well_formed(text.substr(i));
    const bool control = static_cast<unsigned char>(text[i]) < 0x20 || text[i] == 0x7F;
    if (size == 0) clean += "\uFFFD";
    if (size > 0 && !control) clean += text.substr(i, size);
    i += size == 0 ? 1 : size;
  }
  return "“" + clean + (i < text.size() ? "…" : "") + "”";
}

}  // namespace underlawn
