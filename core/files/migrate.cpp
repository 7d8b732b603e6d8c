// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/migrate.h"

#include "files/plan_file.h"

namespace underlawn {

std::span<const MigrationStep> migration_steps() {
  static_assert(kPlanFormat == 1, "A new format needs a step here, and a test with a plan of the old one.");
  return {};
}

void migrate(Json& tree, int version, std::span<const MigrationStep> steps, std::vector<Trouble>& remarks) {
  for (auto step = static_cast<std::size_t>(version - 1); step < steps.size(); ++step) {
    steps[step](tree, remarks);
    tree["format_version"] = step + 2;
  }
}

}  // namespace underlawn
