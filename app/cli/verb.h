// SPDX-License-Identifier: GPL-3.0-or-later
// One table of verbs: from it come what is understood, the help and the man page.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "cli/console.h"

namespace underlawn::cli {

// What stood behind the verb.
struct Arguments {
  std::vector<std::string> places;             // in the order of Verb::places
  std::map<std::string, std::string> options;  // by name, "--out"; a flag has an empty value

  bool has(const std::string& option) const { return options.contains(option); }
  std::optional<std::string> value(const std::string& option) const;
};

struct Place {
  std::string name;  // "PLAN"
  bool required = true;
};

struct Option {
  std::string name;   // "--out"
  std::string value;  // "DIR"; empty for a flag
  std::string help;
};

struct Verb {
  std::string name;
  std::vector<Place> places;
  std::vector<Option> options;
  std::string summary;  // one line, for the list
  std::string details;  // a paragraph
  Exit (*run)(const Arguments& arguments, const Console& console);
};

const std::vector<Verb>& verbs();
const Verb* find_verb(const std::string& name);

// "solve PLAN [--out DIR]"
std::string usage_of(const Verb& verb);

// Refuses an option or place that the verb does not have, one that is missing, and a value that is missing.
// "--out=DIR" and "--out DIR" are the same; behind "--" everything is a place.
Result<Arguments> parse_arguments(const Verb& verb, const std::vector<std::string>& words);

}  // namespace underlawn::cli
