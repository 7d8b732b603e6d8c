// SPDX-License-Identifier: GPL-3.0-or-later
// What programs read (JSON, CSV, input of other programs) is the same in every language: English.
#pragma once

#include <string>

#include "base/say.h"
#include "plan/solve.h"

namespace underlawn::cli {

// What `made` gives when it says everything in English.
template <class Made>
auto in_english(const Made& made) {
  const SpeakHere english(nullptr);
  return made();
}

// The text of an outcome. Words come about while it is worked out, so it is worked out again where the
// program speaks another language.
template <class TextOf>
std::string for_programs(const Plan& plan, const Outcome& outcome, const TextOf& text_of) {
  if (spoken_here() == nullptr) return text_of(plan, outcome);
  return in_english([&] { return text_of(plan, solve(plan)); });
}

}  // namespace underlawn::cli
