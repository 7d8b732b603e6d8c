// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/plan_file.h"

#include "files/atomic_file.h"
#include "files/json_text.h"

namespace underlawn {

Result<WithRemarks<Plan>> load_plan(const std::filesystem::path& path) {
  return read_file(path, kLargestFile).and_then([](const std::string& text) { return plan_from_text(text); });
}

Result<void> save_plan(const Plan& plan, const std::filesystem::path& path) {
  return write_file(path, plan_to_text(plan));
}

}  // namespace underlawn
