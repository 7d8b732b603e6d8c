// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/header_words.h"

#include "base/say.h"

namespace underlawn {

std::string run_size(const Plan& plan, const Outcome& outcome) {
  return outcome.flow ? outcome.flow->sizes.run.name : plan.wishes.header_pipe;
}

std::string header_and_run_sizes(const Plan& plan, const Outcome& outcome) {
  std::vector<std::string> names = {run_size(plan, outcome)};
  if (outcome.flow && !outcome.layout.header.legs.empty())
    for (const PipeSize& step : outcome.flow->sizes.steps)
      if (std::find(names.begin(), names.end(), step.name) == names.end()) names.push_back(step.name);
  std::string all;
  for (std::size_t i = 0; i < names.size(); ++i)
    all += (i == 0 ? "" : i + 1 == names.size() ? say(" and ") : ", ") + names[i];
  return all;
}

}  // namespace underlawn
