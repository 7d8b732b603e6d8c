// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/said.h"

#include <regex>

#include "support/catalogues.h"

namespace underlawn::test {

namespace {

std::string without_quoted(std::string text, const std::string& open, const std::string& close) {
  for (std::size_t at = 0; (at = text.find(open, at)) != std::string::npos;) {
    const std::size_t end = text.find(close, at + open.size());
    text.replace(at, end == std::string::npos ? end : end + close.size() - at, "0");
  }
  return text;
}

}  // namespace

Listener::Listener(std::set<std::string> allowed)
    : here_(&marking_around_holes(UNDERLAWN_SPANISH)), allowed_(std::move(allowed)) {}

void Listener::hear(std::string text) {
  static const std::regex key("[A-Za-z0-9-]*(?:[_.][A-Za-z0-9-]+)+");
  text = std::regex_replace(without_quoted(without_quoted(text, "\u201c", "\u201d"), "\"", "\""), key, "0");
  Unsaid unsaid;
  unsaid.read(text);
  ++heard_;
  for (const std::string& word : unsaid.words())
    if (!allowed_.contains(word) && met_.insert(word).second) unsaid_.push_back(word + " in: " + text);
}

std::set<std::string> units_and(std::set<std::string> more) {
  more.merge(std::set<std::string>{"ft",  "in",   "mi",  "yd", "mm",  "cm",  "km", "kg",  "lb",
                                   "gal", "gpm",  "psi", "Pa", "kPa", "MPa", "kW", "kWh", "Btu",
                                   "min", "days", "Hz",  "kN", "ppm", "MiB", "MB"});
  return more;
}

}  // namespace underlawn::test
