// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "base/say.h"
#include "base/table_text.h"
#include "plan/checks/measure.h"
#include "plan/checks/price_rules.h"

namespace underlawn::checks {

// The heat pump has a price of its own, and a line of the designer's own reads like it too.
std::vector<Finding> heat_pump_twice(const Plan& plan, const Outcome&) {
  constexpr std::array kNames{"heat_pump", "heat-pump", "heatpump", "bomba_de_calor"};  // folded
  if (!(plan.pricing.running.unit_cost > 0)) return {};
  for (const ExtraLine& line : plan.pricing.terms.extras) {
    const std::string item = folded(line.item);
    const bool named =
        std::ranges::any_of(kNames, [&](const char* name) { return item.find(name) != std::string::npos; });
    if (!named || !(line.amount * line.price > 0)) continue;
    Finding f = make_finding("heat_pump_twice", "", Severity::hint,
                             say("The heat pump may be counted twice: in “{}” and by itself", line.item));
    f.advice =
        say("Where both are the same machine, take the line out of the offer, or set the price of the heat "
            "pump indoors to 0 (Price page).");
    f.source = say("price book of the plan");
    return {f};
  }
  return {};
}

}  // namespace underlawn::checks
