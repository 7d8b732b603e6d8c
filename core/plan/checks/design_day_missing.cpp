// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "thermal/surroundings.h"

namespace underlawn::checks {

// The loop and the heat pump are reckoned by the weather year's hours alone: a design day that never comes in
// them is not looked at.
std::vector<Finding> design_day_missing(const Plan& plan, const Outcome& outcome) {
  if (outcome.surroundings == nullptr || plan.thermal.load_source == LoadSource::hours) return {};
  const Surroundings& s = *outcome.surroundings;
  if (s.weather.outdoor.empty() || s.house.heating.empty()) return {};
  const double coldest = *std::min_element(s.weather.outdoor.begin(), s.weather.outdoor.end());
  const double most = *std::max_element(s.house.heating.begin(), s.house.heating.end());
  const double asked = s.load.outdoor_cold;
  if (coldest <= asked + kSameTemperature) return {};
  Finding f = make_finding("design_day_missing", "", Severity::warning,
                           say("The weather year never gets as cold as the design day"));
  set_measure(f, coldest, asked, Quantity::temperature);
  f.advice =
      say("Its coldest hour asks {} of the {} entered: take a weather year of a colder place or winter, or "
          "reckon "
          "with back-up heat on such a day.",
          print_quantity(Quantity::power, most, plan.units),
          print_quantity(Quantity::power, s.load.heat_loss, plan.units));
  f.source = say("load by degrees below the balance temperature; the year's hours alone are reckoned with");
  return {f};
}

}  // namespace underlawn::checks
