// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/plan_in.h"

#include "canvas/pictures.h"
#include "files/plan_file.h"

namespace underlawn::cli {

std::optional<Plan> plan_in(const std::string& path, const Console& console) {
  set_usual_picture_folder(picture_folder(QString::fromStdString(path)));
  const auto loaded = load_plan(path);
  if (!loaded) {
    console.complain(path, loaded.error().message());
    return std::nullopt;
  }
  console.complain(path, loaded->remarks);
  return loaded->value;
}

std::string base_name(const std::string& path) {
  const std::string name = std::filesystem::path(path).filename().string();
  return name.ends_with(kPlanSuffix) ? name.substr(0, name.size() - kPlanSuffix.size()) : name;
}

}  // namespace underlawn::cli
