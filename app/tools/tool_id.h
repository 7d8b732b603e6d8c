// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace underlawn {

enum class ToolId {
  select,
  pan,
  lot,
  house,
  entry,
  drive,
  septic_tank,
  drain_field,
  reserve_field,
  well,
  tree,
  utility,
  easement,
  no_dig,
  trench,
  height,
  measure,
  why,
  move,
  copy,
  paste,
  turn,
  parallel,
  split,
  dimension,
  clearance,
  access,
  laydown,
  ask,
};

// "drain_field": the part of a command's id behind "tool.".
std::string_view tool_name(ToolId id);
std::optional<ToolId> tool_named(std::string_view name);
std::span<const ToolId> all_tools();

}  // namespace underlawn
