// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/typed_text.h"

#include <utility>

#include "base/utf8.h"

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
  const bool plain = static_cast<unsigned char>(text[0]) < 0x80 && text[0] != '\'' && text[0] != '\t';
  if (plain) return nullptr;  // of the rows only '' and the tab begin with a plain character
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

std::string in_quotes(std::string_view text, std::size_t most) {
  std::string clean;
  std::size_t i = 0;
  while (i < text.size() && clean.size() < most) {
    const std::size_t size = utf8_size(text.substr(i));
    const bool control = static_cast<unsigned char>(text[i]) < 0x20 || text[i] == 0x7F;
    if (size == 0) clean += "\uFFFD";
    if (size > 0 && !control) clean += text.substr(i, size);
    i += size == 0 ? 1 : size;
  }
  return "“" + clean + (i < text.size() ? "…" : "") + "”";
}

}  // namespace underlawn
