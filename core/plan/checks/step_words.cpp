// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/step_words.h"

#include <cctype>

#include "base/say.h"

namespace underlawn {

std::string steps_named(const std::vector<const DigStep*>& steps) {
  std::string all;
  const std::size_t shown = steps.size() > 3 ? 2 : steps.size();
  for (std::size_t i = 0; i < shown; ++i) {
    std::string name = step_name(*steps[i]);
    name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
    all += (i == 0 ? "" : i + 1 == steps.size() ? say(" and ") : ", ") + name;
  }
  return shown < steps.size() ? say("{} and {} more", all, std::to_string(steps.size() - shown)) : all;
}

}  // namespace underlawn
