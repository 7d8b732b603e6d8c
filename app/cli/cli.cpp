// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/cli.h"

#include <QString>
#include <algorithm>
#include <filesystem>
#include <iostream>

#include "base/say.h"
#include "cli/help.h"
#include "cli/verbs.h"
#include "files/plan_file.h"
#include "language/language.h"
#include "window/run_window.h"

namespace underlawn::cli {

namespace {

using Words = std::vector<std::string>;

bool has_display() {
  return std::ranges::any_of(
      std::initializer_list<const char*>{"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"},
      [](const char* name) { return !qEnvironmentVariableIsEmpty(name); });
}

Exit misused(const std::string& message, const Console& console) {
  console.complain("", say("{} Try “underlawn --help”.", message));
  return Exit::usage;
}

Exit run_verb(const Verb& verb, const Words& words, const Console& console) {
  if (std::ranges::find(words, "--help") != words.end()) {
    console.out << help_text(verb);
    return Exit::ok;
  }
  const auto arguments = parse_arguments(verb, words);
  if (arguments) return verb.run(*arguments, console);
  console.complain("", arguments.error().message());
  return Exit::usage;
}

std::optional<std::string> text_for(const std::string& option) {
  if (option == "--help" || option == "-h") return help_text();
  if (option == "--version") return version_text();
  if (option == "--man") return man_page();
  return std::nullopt;
}

// A slip of the finger in a verb should not open a window on a plan of that name.
bool may_be_plan(const std::string& word) {
  std::error_code error;
  return word.ends_with(kPlanSuffix) || std::filesystem::exists(word, error);
}

Exit solve_instead(const Words& words, const Console& console) {
  if (words.empty()) return misused(say("There is no display to open the window on."), console);
  console.complain("", say("There is no display to open the window on; solving the plan instead."));
  return run_verb(*find_verb("solve"), words, console);
}

// What to do, or nothing when the window is to be opened.
std::optional<Exit> without_window(const Words& words, const Console& console) {
  const std::string first = words.empty() ? "" : words[0];
  if (const Verb* verb = find_verb(first)) return run_verb(*verb, {words.begin() + 1, words.end()}, console);
  if (const auto text = text_for(first)) {
    console.out << *text;
    return Exit::ok;
  }
  if (first.starts_with('-')) return misused(say("There is no option “{}”.", first), console);
  if (words.size() > 1) return misused(say("There is no verb “{}”.", first), console);
  if (!first.empty() && !may_be_plan(first))
    return misused(say("“{}” is neither a verb nor a plan.", first), console);
  if (!has_display()) return solve_instead(words, console);
  return std::nullopt;
}

// Takes “--language es” from the front of the words; English without it, but for the window, which remembers
// what was chosen in it. Nothing where the language is not one of ours.
std::optional<std::string> taken_language(Words& words) {
  if (words.empty() || !words[0].starts_with("--language")) return "";
  const bool joined = words[0].starts_with("--language=");
  const std::string code = joined ? words[0].substr(11) : words.size() > 1 ? words[1] : "";
  words.erase(words.begin(), words.begin() + std::min<std::ptrdiff_t>(joined ? 1 : 2, std::ssize(words)));
  if (find_language(code) == nullptr) return std::nullopt;
  return code;
}

}  // namespace

int run_program(int& argc, char** argv) {
  Words words(argv + std::min(argc, 1), argv + argc);
  const Console console{std::cout, std::cerr};
  const auto language = taken_language(words);
  if (!language) return static_cast<int>(misused(say("The language must be en or es."), console));
  if (!language->empty()) speak(*language);
  auto done = without_window(words, console);
  if (!done)
    return run_window(argc, argv, words.empty() ? QString() : QString::fromLocal8Bit(words[0].c_str()),
                      *language);
  if (!std::cout.flush()) {
    console.complain("", say("Standard output could not be written."));
    done = Exit::not_written;
  }
  return static_cast<int>(*done);
}

}  // namespace underlawn::cli
