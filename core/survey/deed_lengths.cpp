// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "survey/deed_words.h"

namespace underlawn::deed {

namespace {

constexpr double kFoot = 0.3048;
constexpr double kInch = 0.0254;
constexpr double kSurveyFoot = 1200.0 / 3937;

constexpr std::pair<std::string_view, double> kUnits[] = {
    {"ft", kFoot},
    {"foot", kFoot},
    {"feet", kFoot},
    {"in", kInch},
    {"inch", kInch},
    {"inches", kInch},
    {"yd", 3 * kFoot},
    {"yds", 3 * kFoot},
    {"yard", 3 * kFoot},
    {"yards", 3 * kFoot},
    {"m", 1},
    {"meter", 1},
    {"meters", 1},
    {"metre", 1},
    {"metres", 1},
    {"cm", 0.01},
    {"mm", 0.001},
    {"km", 1000},
    {"mi", 5280 * kFoot},
    {"mile", 5280 * kFoot},
    {"miles", 5280 * kFoot},
    {"ch", 66 * kFoot},
    {"chs", 66 * kFoot},
    {"chain", 66 * kFoot},
    {"chains", 66 * kFoot},
    {"link", 0.66 * kFoot},
    {"links", 0.66 * kFoot},
    {"lk", 0.66 * kFoot},
    {"lks", 0.66 * kFoot},
    {"rod", 16.5 * kFoot},
    {"rods", 16.5 * kFoot},
    {"rd", 16.5 * kFoot},
    {"rds", 16.5 * kFoot},
    {"pole", 16.5 * kFoot},
    {"poles", 16.5 * kFoot},
    {"perch", 16.5 * kFoot},
    {"perches", 16.5 * kFoot},
    {"furlong", 660 * kFoot},
    {"furlongs", 660 * kFoot},
    {"vara", 100.0 / 3 * kInch},
    {"varas", 100.0 / 3 * kInch},
    {"vrs", 100.0 / 3 * kInch},
    {"usft", kSurveyFoot},
    {"sft", kSurveyFoot},
    {"ftus", kSurveyFoot},
};

bool ends_before(const Tokens& t, std::size_t at) {
  return at >= t.size();
}

// The unit at `at`, and what stands behind it.
std::optional<double> unit_at(const Tokens& t, std::size_t at, std::size_t& end) {
  std::size_t i = at;
  if (!ends_before(t, i) && is_sign(t[i], '.') && !t[i].blank_before) ++i;  // 120. feet
  if (ends_before(t, i)) return std::nullopt;
  end = i + 1;
  if (is_sign(t[i], '\'')) return kFoot;
  if (is_sign(t[i], '"')) return kInch;
  std::size_t foot = i;
  if (is_word(t[foot], {"us", "u"})) {
    while (foot < t.size() && (is_word(t[foot], {"us", "u", "s"}) || is_sign(t[foot], '.'))) ++foot;
  }
  const bool survey = foot < t.size() && is_word(t[foot], {"survey"});
  if (survey) ++foot;
  if (foot > i && foot < t.size() && is_word(t[foot], {"ft", "foot", "feet"})) {
    end = foot + 1;
    return kSurveyFoot;
  }
  if (is_word(t[i], {"international"}) && i + 1 < t.size() && is_word(t[i + 1], {"ft", "foot", "feet"})) {
    end = i + 2;
    return kFoot;
  }
  return t[i].kind == Token::Kind::word ? unit_of_length(t[i].text) : std::nullopt;
}

// "1/2" with nothing between, no more than 4 digits a number.
std::optional<double> fraction_at(const Tokens& t, std::size_t at) {
  if (at + 2 >= t.size() || t[at].kind != Token::Kind::number || !is_sign(t[at + 1], '/') ||
      t[at + 2].kind != Token::Kind::number)
    return std::nullopt;
  const bool plain =
      !t[at].decimals && !t[at + 2].decimals && !t[at + 1].blank_before && !t[at + 2].blank_before;
  if (!plain || t[at + 2].value <= t[at].value || t[at + 2].value > 1000) return std::nullopt;
  return t[at].value / t[at + 2].value;
}

// A number with its fraction: 6 1/2, 6-1/2, 1/2.
struct Amount {
  double value = 0;
  bool doubtful = false;
  std::size_t end = 0;
};
std::optional<Amount> amount_at(const Tokens& t, std::size_t at) {
  if (at >= t.size() || t[at].kind != Token::Kind::number) return std::nullopt;
  if (const auto part = fraction_at(t, at)) return Amount{*part, false, at + 3};
  Amount a{t[at].value, t[at].doubtful, at + 1};
  if (t[at].decimals) return a;
  const std::size_t next = at + 1 < t.size() && is_sign(t[at + 1], '-') ? at + 2 : at + 1;
  if (const auto part = fraction_at(t, next)) {
    a.value += *part;
    a.end = next + 3;
  }
  return a;
}

std::size_t over_joining(const Tokens& t, std::size_t at) {
  while (at < t.size() && (is_word(t[at], {"and"}) || is_sign(t[at], ',') || is_sign(t[at], '-'))) ++at;
  return at;
}

// The inches behind feet, the links behind chains: less of it than makes one of the unit before.
void take_smaller(const Tokens& t, Length& length) {
  for (double unit = length.unit;;) {
    const std::size_t at = over_joining(t, length.end);
    const auto more = amount_at(t, at);
    if (!more || more->doubtful) return;
    std::size_t end = 0;
    const auto smaller = unit_at(t, more->end, end);
    if (!smaller || *smaller >= unit || more->value * *smaller >= unit * (1 - 1e-9)) return;
    length.metres += more->value * *smaller;
    length.end = end;
    unit = *smaller;
  }
}

}  // namespace

std::optional<double> unit_of_length(std::string_view word) {
  for (const auto& [name, metres] : kUnits)
    if (name == word) return metres;
  return std::nullopt;
}

std::optional<Length> length_at(const Tokens& t, std::size_t at, double bare) {
  const auto amount = amount_at(t, at);
  if (!amount) return std::nullopt;
  Length length{amount->value * bare, 0, amount->end, amount->doubtful};
  std::size_t end = 0;
  const auto unit = unit_at(t, amount->end, end);
  if (!unit) return length;
  length = {amount->value * *unit, *unit, end, amount->doubtful};
  take_smaller(t, length);
  return length;
}

}  // namespace underlawn::deed
