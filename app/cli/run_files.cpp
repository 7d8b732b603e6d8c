// SPDX-License-Identifier: GPL-3.0-or-later
#include <filesystem>

#include "base/say.h"
#include "cli/verbs.h"
#include "files/atomic_file.h"
#include "files/json_text.h"
#include "files/plan_file.h"

namespace underlawn::cli {

namespace {

Exit written(const Result<void>& saved, const std::string& path, const Console& console) {
  if (saved)
    console.out << path << "\n";
  else
    console.complain(path, saved.error().message());
  return saved ? Exit::ok : Exit::not_written;
}

}  // namespace

Exit run_resave(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto text = read_file(path, kLargestFile);
  const auto plan = text.and_then([](const std::string& bytes) { return plan_from_text(bytes); });
  if (!plan) {
    console.complain(path, plan.error().message());
    return Exit::not_read;
  }
  console.complain(path, plan->remarks);
  const bool same = plan_to_text(plan->value) == *text;
  if (arguments.has("--strict")) {
    console.out << (same ? say("{}: unchanged", path) : say("{}: saving would change it", path)) << "\n";
    return same ? Exit::ok : Exit::errors_remain;
  }
  if (!plan->remarks.empty()) {
    console.complain(path, say("Not saved: something in the file, named above, would be lost."));
    return Exit::not_read;
  }
  return written(save_plan(plan->value, path), path, console);
}

Exit run_new(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  std::error_code error;
  if (std::filesystem::exists(path, error)) {
    console.complain(path, say("The file is there already and was left as it is. Choose another name."));
    return Exit::not_written;
  }
  return written(save_plan(Plan{}, path), path, console);
}

}  // namespace underlawn::cli
