// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/step_words.h"

#include "base/say.h"
#include "base/wording.h"

namespace underlawn {

std::string steps_named(const std::vector<const DigStep*>& steps) {
  const std::size_t shown = steps.size() > 3 ? 2 : steps.size();
  std::vector<std::string> names;
  for (std::size_t i = 0; i < shown; ++i) names.push_back(uncapitalised(step_name(*steps[i])));
  return shown < steps.size() ? say("{} and {} more", joined(names), steps.size() - shown)
                              : joined_and(names);
}

}  // namespace underlawn
