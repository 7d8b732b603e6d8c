// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/step_words.h"

#include "base/say.h"
#include "base/wording.h"

namespace underlawn {

std::string steps_named(const std::vector<const DigStep*>& steps) {
  std::vector<std::string> names;
  for (const DigStep* step : steps) names.push_back(uncapitalised(step_name(*step)));
  return joined_and(names);
}

}  // namespace underlawn
