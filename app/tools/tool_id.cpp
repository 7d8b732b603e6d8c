// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/tool_id.h"

#include <array>

namespace underlawn {

namespace {

using enum ToolId;

constexpr std::array kTools = {select,      pan,         lot,           house,   entry,    drive,
                               septic_tank, drain_field, reserve_field, well,    tree,     utility,
                               easement,    no_dig,      trench,        height,  measure,  why,
                               move,        copy,        paste,         turn,    parallel, split,
                               dimension,   clearance,   access,        laydown, ask};

}  // namespace

std::string_view tool_name(ToolId id) {
  static constexpr std::array<std::string_view, kTools.size()> kNames = {
      "select",        "pan",       "lot",    "house",   "entry",    "drive",  "septic_tank", "drain_field",
      "reserve_field", "well",      "tree",   "utility", "easement", "no_dig", "trench",      "height",
      "measure",       "why",       "move",   "copy",    "paste",    "turn",   "parallel",    "split",
      "dimension",     "clearance", "access", "laydown", "ask"};
  return kNames[static_cast<std::size_t>(id)];
}

std::optional<ToolId> tool_named(std::string_view name) {
  for (ToolId id : kTools)
    if (tool_name(id) == name) return id;
  return std::nullopt;
}

std::span<const ToolId> all_tools() {
  return kTools;
}

}  // namespace underlawn
