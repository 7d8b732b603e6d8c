// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/help.h"

#include <algorithm>
#include <sstream>

#include "base/say.h"
#include "cli/help_words.h"

namespace underlawn::cli {

namespace {

constexpr std::size_t kWidth = 80;

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(
      std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

// `text` broken at blanks into lines of at most kWidth, each with `margin` blanks before it except the first,
// which starts at `column`.
std::string wrapped(std::string_view text, std::size_t margin, std::size_t column) {
  std::istringstream words{std::string(text)};
  std::string out;
  bool first = true;
  for (std::string word; words >> word; first = false) {
    const std::size_t size = characters(word);
    if (!first && column + 1 + size > kWidth) {
      out += "\n" + std::string(margin, ' ');
      column = margin;
    } else if (!first) {
      out += ' ';
      ++column;
    }
    out += word;
    column += size;
  }
  return out + "\n";
}

// "  name   text", the text in a column of its own.
std::string row(std::string_view name, std::string_view text, std::size_t column) {
  std::string out = "  " + std::string(name);
  out += characters(out) + 2 > column ? "\n" + std::string(column, ' ')
                                      : std::string(column - characters(out), ' ');
  return out + wrapped(text, column, column);
}

std::string flag_with_value(const Option& option) {
  return option.name + (option.value.empty() ? "" : " " + option.value);
}

}  // namespace

std::string version_text() {
  return "underlawn " UNDERLAWN_VERSION "\n";
}

std::string help_text() {
  std::string out = "underlawn: " + translated(kPurpose) + "\n\n" + say("Usage:") + "\n  underlawn [PLAN]\n";
  for (const Verb& verb : verbs()) out += "  underlawn " + wrapped(usage_of(verb), 6, 12);
  out += "\n" + wrapped(translated(kWindow), 0, 0) + "\n" + say("Verbs:") + "\n";
  for (const Verb& verb : verbs()) out += row(verb.name, translated(verb.summary), 13);
  out += "\n" + say("Options:") + "\n";
  for (const auto& [name, text] : kGeneral) out += row(name, translated(text), 13);
  out += "\n" + say("Exit status:") + "\n";
  for (const auto& [code, text] : kExits) out += row(code, translated(text), 5);
  return out + "\n" + say("Results go to standard output, trouble to standard error.") + "\n\n" +
         wrapped(translated(kCaution), 0, 0);
}

std::string help_text(const Verb& verb) {
  const std::string usage = say("Usage:") + " underlawn ";
  std::string out =
      usage + wrapped(usage_of(verb), 6, characters(usage)) + "\n" + wrapped(translated(verb.details), 0, 0);
  if (!verb.options.empty()) out += "\n" + say("Options:") + "\n";
  for (const Option& option : verb.options) out += row(flag_with_value(option), translated(option.help), 18);
  return out;
}

}  // namespace underlawn::cli
