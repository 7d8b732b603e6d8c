// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/outcome.h"

#include <algorithm>

#include "site/terrain.h"

namespace underlawn {

const Terrain& terrain_of(const Outcome& outcome) {
  static const Terrain kUnknown;
  return outcome.terrain ? *outcome.terrain : kUnknown;
}

bool has_unaccepted_errors(const Outcome& outcome) {
  return std::any_of(outcome.findings.begin(), outcome.findings.end(),
                     [](const Finding& f) { return f.severity == Severity::error && !f.accepted; });
}

}  // namespace underlawn
