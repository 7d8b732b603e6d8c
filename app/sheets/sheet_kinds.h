// SPDX-License-Identifier: GPL-3.0-or-later
// The one table of all sheets. The window's list, the command line and the bundle are made from it.
#pragma once

#include <span>
#include <string_view>

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/sheet.h"

namespace underlawn {

struct SheetKind {
  std::string_view name;   // at the command line and in file names: "dig", "permit"; unique
  std::string_view title;  // "Dig sheet"
  std::string_view help;   // one sentence: who reads it, for what
  SheetPtr (*make)(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
};

// In the order in which one file holds them.
std::span<const SheetKind> sheet_kinds();
const SheetKind* find_sheet_kind(std::string_view name);

}  // namespace underlawn
