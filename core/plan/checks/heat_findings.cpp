// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/heat_findings.h"

#include <algorithm>

#include "base/say.h"
#include "house/calendar.h"
#include "plan/checks/measure.h"

namespace underlawn::checks {

namespace {

std::string moment(std::size_t year, int hour) {
  return say("year {}, {}", std::to_string(year + 1), date_of_hour(hour));
}

}  // namespace

const Simulation* simulated(const Outcome& outcome) {
  if (outcome.temperatures == nullptr || outcome.temperatures->simulation.years.empty()) return nullptr;
  return &outcome.temperatures->simulation;
}

const YearSum* last_year(const Outcome& outcome) {
  const Simulation* s = simulated(outcome);
  return s == nullptr ? nullptr : &s->years.back();
}

std::string when_coldest(const Simulation& s) {
  const auto at = std::min_element(s.years.begin(), s.years.end(),
                                   [](const YearSum& a, const YearSum& b) { return a.coldest < b.coldest; });
  return moment(static_cast<std::size_t>(at - s.years.begin()), at->coldest_hour);
}

std::string when_warmest(const Simulation& s) {
  const auto at = std::max_element(s.years.begin(), s.years.end(),
                                   [](const YearSum& a, const YearSum& b) { return a.warmest < b.warmest; });
  return moment(static_cast<std::size_t>(at - s.years.begin()), at->warmest_hour);
}

Finding limit_broken(const char* rule, std::string title, double measured, double limit,
                     const Outcome& outcome) {
  Finding f = make_finding(rule, "", Severity::error, std::move(title));
  set_measure(f, measured, limit, Quantity::temperature);
  f.advice = say("Lay more or longer coils, deeper or further apart; “Size the loop” finds how many.");
  f.places = trench_places(outcome.layout);
  f.source = say("limit entered by the designer, from the heat pump's papers");
  return f;
}

}  // namespace underlawn::checks
