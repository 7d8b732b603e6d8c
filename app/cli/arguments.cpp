// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "cli/verb.h"

namespace underlawn::cli {

namespace {

Trouble misused(const Verb& verb, std::string what) {
  return {"usage", std::move(what), "", "", say("Usage: underlawn {}", usage_of(verb))};
}

const Option* find_option(const Verb& verb, const std::string& name) {
  const auto at = std::ranges::find(verb.options, name, &Option::name);
  return at == verb.options.end() ? nullptr : &*at;
}

// Takes one option, with its value from behind "=" or from the next word; says what is wrong with it.
std::optional<Trouble> take_option(const Verb& verb, const std::vector<std::string>& words, std::size_t& i,
                                   Arguments& arguments) {
  const std::size_t equals = words[i].find('=');
  const std::string name = words[i].substr(0, equals);
  const Option* option = find_option(verb, name);
  if (option == nullptr) return misused(verb, say("{} has no option {}", verb.name, name));
  if (arguments.has(name)) return misused(verb, say("{} is given twice", name));
  const bool flag = option->value.empty();
  if (flag && equals != std::string::npos) return misused(verb, say("{} takes no value", name));
  if (flag) {
    arguments.options[name] = "";
    return std::nullopt;
  }
  if (equals == std::string::npos && i + 1 == words.size())
    return misused(verb, say("{} needs {}", name, option->value));
  arguments.options[name] = equals == std::string::npos ? words[++i] : words[i].substr(equals + 1);
  return std::nullopt;
}

}  // namespace

std::optional<std::string> Arguments::value(const std::string& option) const {
  const auto at = options.find(option);
  if (at == options.end()) return std::nullopt;
  return at->second;
}

Result<Arguments> parse_arguments(const Verb& verb, const std::vector<std::string>& words) {
  Arguments arguments;
  bool only_places = false;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!only_places && words[i] == "--") {
      only_places = true;
    } else if (!only_places && words[i].size() > 1 && words[i][0] == '-') {
      if (auto trouble = take_option(verb, words, i, arguments)) return refuse(*trouble);
    } else if (arguments.places.size() == verb.places.size()) {
      return refuse(misused(verb, say("{} does not know what to do with “{}”", verb.name, words[i])));
    } else {
      arguments.places.push_back(words[i]);
    }
  }
  if (arguments.places.size() < verb.places.size() && verb.places[arguments.places.size()].required)
    return refuse(misused(verb, say("{} needs {}", verb.name, verb.places[arguments.places.size()].name)));
  return arguments;
}

std::string usage_of(const Verb& verb) {
  std::string usage = verb.name;
  for (const Place& place : verb.places) usage += place.required ? " " + place.name : " [" + place.name + "]";
  for (const Option& option : verb.options)
    usage += " [" + option.name + (option.value.empty() ? "" : " " + option.value) + "]";
  return usage;
}

}  // namespace underlawn::cli
