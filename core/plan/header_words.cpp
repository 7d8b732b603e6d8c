// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/header_words.h"

#include <algorithm>

#include "base/wording.h"

namespace underlawn {

std::string run_size(const Plan& plan, const Outcome& outcome) {
  return outcome.flow ? outcome.flow->sizes.run.name : plan.wishes.header_pipe;
}

std::string header_and_run_sizes(const Plan& plan, const Outcome& outcome) {
  std::vector<std::string> names = {run_size(plan, outcome)};
  if (outcome.flow && !outcome.layout.header.legs.empty())
    for (const PipeSize& step : outcome.flow->sizes.steps)
      if (std::find(names.begin(), names.end(), step.name) == names.end()) names.push_back(step.name);
  return joined_and(names);
}

}  // namespace underlawn
