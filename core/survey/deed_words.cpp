// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/deed_words.h"

#include <algorithm>
#include <charconv>

#include "base/say.h"
#include "base/typed_text.h"

namespace underlawn::deed {

namespace {

constexpr std::pair<std::string_view, std::string_view> kSigns[] = {
    {"°", "^"},       {"º", "^"}, {"˚", "^"},     {"Δ", " delta "},
    {"∆", " delta "}, {"±", " "}, {"\r\n", "\n"}, {"\r", "\n"}};

std::string with_plain_signs(std::string_view typed) {
  std::string out;
  for (std::size_t i = 0; i < typed.size();) {
    if (static_cast<unsigned char>(typed[i]) < 0x80 && typed[i] != '\r') {
      out += typed[i++];
      continue;
    }
    const auto* row = std::find_if(std::begin(kSigns), std::end(kSigns),
                                   [&](const auto& r) { return typed.substr(i).starts_with(r.first); });
    const bool found = row != std::end(kSigns);
    if (found)
      out += row->second;
    else
      out += typed[i];
    i += found ? row->first.size() : 1;
  }
  return out;
}

constexpr std::size_t kMostQuoted = 60;  // bytes

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}

class Scanner {
 public:
  explicit Scanner(PlainDeed& deed) : deed_(deed), text_(deed.text) {}

  void run() {
    while (at_ < text_.size()) step();
  }

 private:
  char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
  void step();
  void number();
  void take_group_or_mark(std::string& digits, Token& token);
  void take_while(bool (*of)(char), std::string& into) {
    while (at_ < text_.size() && of(text_[at_])) into += text_[at_++];
  }
  void keep(Token token) {
    token.blank_before = blank_;
    token.line = line_;
    token.end = at_;
    blank_ = false;
    deed_.tokens.push_back(std::move(token));
  }
  // Where a # or // starts a remark that goes on to the end of the line.
  bool remark_here() const {
    const bool hash = peek() == '#' && (peek(1) == ' ' || peek(1) == '\n' || peek(1) == '\0');
    const bool first = at_ == line_start_ && peek() == '#';
    return first || (blank_or_start() && (hash || (peek() == '/' && peek(1) == '/')));
  }
  bool blank_or_start() const { return blank_ || at_ == 0 || text_[at_ - 1] == '\n'; }

  PlainDeed& deed_;
  const std::string& text_;
  std::size_t at_ = 0, line_start_ = 0;
  int line_ = 1;
  bool blank_ = false;
};

void Scanner::step() {
  const char c = peek();
  if (c == '\n') {
    ++at_;
    ++line_;
    line_start_ = at_;
    blank_ = true;
    return;
  }
  if (remark_here()) {
    while (at_ < text_.size() && peek() != '\n') ++at_;
    return;
  }
  if (c == ' ' || c == '|') {
    if (at_ == line_start_) ++line_start_;
    ++at_;
    blank_ = true;
    return;
  }
  const bool behind_letter = at_ > 0 && is_letter(text_[at_ - 1]);  // N.45
  if (is_digit(c) || (c == '.' && is_digit(peek(1)) && !behind_letter)) return number();
  Token token;
  token.begin = at_;
  if (is_letter(c)) {
    token.kind = Token::Kind::word;
    take_while(is_letter, token.text);
  } else {
    token.text = c;
    ++at_;
  }
  keep(std::move(token));
}

// Behind the first digits: 1,234.5 and 1,234,567 are thousands; 12,5 a decimal mark; 1,234 is doubtful.
void Scanner::take_group_or_mark(std::string& digits, Token& token) {
  std::size_t groups = 0;
  const std::size_t start = at_;
  std::string grouped = digits;
  const auto three = [&] {
    return peek() == ',' && is_digit(peek(1)) && is_digit(peek(2)) && is_digit(peek(3)) && !is_digit(peek(4));
  };
  while (digits.size() <= 3 && three()) {
    grouped += text_.substr(at_ + 1, 3);
    at_ += 4;
    ++groups;
  }
  const bool point = peek() == '.' && is_digit(peek(1));
  if (groups > 0) {
    token.doubtful = groups == 1 && !point && digits != "0";
    digits = grouped;
  }
  at_ = groups > 0 ? at_ : start;
  const bool comma = groups == 0 && peek() == ',' && is_digit(peek(1));
  if (!point && !comma) return;
  digits += '.';
  ++at_;
  take_while(is_digit, digits);
  token.decimals = true;
}

void Scanner::number() {
  Token token;
  token.kind = Token::Kind::number;
  token.begin = at_;
  std::string digits;
  take_while(is_digit, digits);
  take_group_or_mark(digits, token);
  if (digits.size() > 25) digits.resize(25);
  std::from_chars(digits.data(), digits.data() + digits.size(), token.value);
  token.text = digits;
  keep(std::move(token));
}

// Where in `shown` the characters of these numbers, from 1, begin.
std::vector<std::size_t> bytes_of(const std::string& shown, const std::vector<int>& characters) {
  std::vector<std::size_t> begins;
  for (std::size_t i = 0; i < shown.size(); ++i)
    if ((static_cast<unsigned char>(shown[i]) & 0xC0) != 0x80) begins.push_back(i);
  std::vector<std::size_t> places;
  places.reserve(characters.size());
  for (int c : characters) {
    const auto index = static_cast<std::size_t>(c - 1);
    places.push_back(index < begins.size() ? begins[index] : shown.size());
  }
  return places;
}

}  // namespace

std::string quoted(const PlainDeed& deed, std::size_t from, std::size_t to) {
  if (from >= to || to > deed.tokens.size()) return "";
  const std::size_t begin = deed.place[deed.tokens[from].begin];
  const std::size_t end = deed.place[deed.tokens[to - 1].end];
  std::string words;
  for (char c : deed.shown.substr(begin, std::min(end - begin, kMostQuoted * 3)))
    if (c == '^')
      words += "°";
    else if (c != '\n' && c != '\t')
      words += c;
    else if (!words.empty() && words.back() != ' ')
      words += ' ';
  return in_quotes(words, kMostQuoted);
}

PlainDeed plain_deed(std::string_view typed) {
  PlainDeed deed;
  deed.shown = with_plain_signs(typed);
  TypedText plain = typed_text(deed.shown);
  deed.text = std::move(plain.plain);
  deed.place = bytes_of(deed.shown, plain.place);
  for (char& c : deed.text)
    if (c >= 'A' && c <= 'Z')
      c = static_cast<char>(c - 'A' + 'a');
    else if (static_cast<unsigned char>(c) < 0x20 && c != '\n')
      c = ' ';
  Scanner(deed).run();
  return deed;
}

bool is_word(const Token& t, std::initializer_list<std::string_view> words) {
  return t.kind == Token::Kind::word && std::find(words.begin(), words.end(), t.text) != words.end();
}

bool is_sign(const Token& t, char c) {
  return t.kind == Token::Kind::sign && t.text[0] == c;
}

}  // namespace underlawn::deed
