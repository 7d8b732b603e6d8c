// SPDX-License-Identifier: GPL-3.0-or-later
// How the sheets of this plan are printed.
#pragma once

#include <optional>
#include <string>

namespace underlawn {

enum class SheetUnits { as_plan, metric, us };
inline constexpr int kSheetUnitsChoices = 3;
inline constexpr int kLargestSheetScale = 100'000;

// Kept with the plan, because they belong to the job: the scale to the size of the lot, language and units to
// the crew that digs it, and whoever opens the plan prints the same. Paper is not among them: it is what lies
// in a printer, and the person's own (window/settings.h).
struct SheetWishes {
  std::optional<int> scale;  // 1:scale, 1..kLargestSheetScale; none: the largest that fits
  std::string language;      // "es"; empty: as the program speaks
  SheetUnits units = SheetUnits::as_plan;
  bool page_a_trench = false;  // dig sheet
  bool operator==(const SheetWishes&) const = default;
};

}  // namespace underlawn
