// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/migrate.h"

#include "files/plan_file.h"

namespace underlawn {

namespace {

// Format 1 asked for no temperatures: the usual wishes stand in.
void add_heat(Json& tree, std::vector<Trouble>&) {
  const Json usual = Json::parse(plan_to_text(Plan{}));
  for (const char* part : {"thermal", "flow", "test"})
    if (!tree.contains(part)) tree[part] = usual[part];
}

// Format 2 knew one aim and no prices.
void add_aim(Json& tree, std::vector<Trouble>&) {
  if (!tree.contains("wishes") || !tree["wishes"].is_object()) return;
  const Json usual = Json::parse(plan_to_text(Plan{}))["wishes"];
  for (const char* key : {"aim", "prices", "least_length_m", "most_length_m", "groups"})
    if (!tree["wishes"].contains(key)) tree["wishes"][key] = usual[key];
}

constexpr MigrationStep kSteps[] = {add_heat, add_aim};

}  // namespace

std::span<const MigrationStep> migration_steps() {
  static_assert(std::size(kSteps) == kPlanFormat - 1,
                "A new format needs a step here, and a test with a plan of the old one.");
  return kSteps;
}

void migrate(Json& tree, int version, std::span<const MigrationStep> steps, std::vector<Trouble>& remarks) {
  for (auto step = static_cast<std::size_t>(version - 1); step < steps.size(); ++step) {
    steps[step](tree, remarks);
    tree["format_version"] = step + 2;
  }
}

}  // namespace underlawn
