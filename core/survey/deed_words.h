// SPDX-License-Identifier: GPL-3.0-or-later
// The words of a deed: numbers, words and signs, and the lengths, angles and bearings they spell. A deed's
// azimuths are radians clockwise from its north, 0 to below 2 pi.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.h"

namespace underlawn::deed {

struct Token {
  enum class Kind { number, word, sign } kind = Kind::sign;
  std::string text;       // small letters; of a number the digits as they are read: "1234.5"
  double value = 0;       // of a number
  bool decimals = false;  // of a number
  bool doubtful = false;  // of a number: 1,234 can mean two things
  bool blank_before = false;
  int line = 0;                    // from 1
  std::size_t begin = 0, end = 0;  // bytes in PlainDeed::text
};

// The text in small letters and plain signs: ^ for degrees, ' and " for minutes and seconds or feet and
// inches. Lines end in \n, and are those of what was typed.
struct PlainDeed {
  std::string text;
  std::vector<Token> tokens;
  std::string shown;               // as typed, but for the signs
  std::vector<std::size_t> place;  // in `shown`, of each byte of `text` and of its end
};
PlainDeed plain_deed(std::string_view typed);
// Tokens from..to as they were typed, between quotation marks, shortened.
std::string quoted(const PlainDeed& deed, std::size_t from, std::size_t to);

// Tokens from..to of a deed, one call at a time.
using Tokens = std::vector<Token>;

bool is_word(const Token& t, std::initializer_list<std::string_view> words);
bool is_sign(const Token& t, char c);

struct Length {
  double metres = 0;
  double unit = 0;      // m; 0: none was written
  std::size_t end = 0;  // the token behind it
  bool doubtful = false;
};
// A length that begins at token `at`: `120.50 feet`, `12'-6 1/2"`, `10 chains 25 links`, `4 rods`. Without a
// unit it is of `bare` metres each.
std::optional<Length> length_at(const Tokens& tokens, std::size_t at, double bare);
// m of a unit of length called so, where there is one: chain 66 ft, rod 16.5 ft, link 0.66 ft, Texas vara
// 33 1/3 in, US survey foot 1200/3937 m (NIST Handbook 44, Appendix C; vara: Texas Natural Resources Code
// 21.077).
std::optional<double> unit_of_length(std::string_view word);

struct Angle {
  double radians = 0;
  bool marked = false;  // degrees were written as degrees: by a mark or as 45-30-15
  std::string wrong;    // "" or what is out of bounds: "minutes"
  std::size_t end = 0;
};
// 45^30'15", 45-30-15, 45 30 15, 45.504, 45 degrees 30 minutes and 15 seconds, 45d30m15s. Feet behind it
// are not taken for minutes where they would be 60 or more.
std::optional<Angle> angle_at(const Tokens& tokens, std::size_t at);

struct Bearing {
  double azimuth = 0;
  bool due = false;   // "North", without an angle
  std::string wrong;  // "" or what is the matter
  std::size_t end = 0;
};
// N 45^30' E, South 5 degrees West, S.45-30-15.W; not due ones.
std::optional<Bearing> bearing_at(const Tokens& tokens, std::size_t at);
// "due north", "north", "e": whether a distance follows is for the caller to see.
std::optional<Bearing> due_at(const Tokens& tokens, std::size_t at);
// A text that is a bearing and nothing else: N 45°30' E, due west, 135.5, AZ 135-30-00.
std::optional<double> bearing_in(std::string_view text);
// north, northeasterly, ne: which way something lies, for a curve's hollow side.
std::optional<double> rough_direction(std::string_view word);

}  // namespace underlawn::deed
