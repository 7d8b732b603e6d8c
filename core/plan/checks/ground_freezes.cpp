// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "base/wording.h"
#include "plan/checks/heat_findings.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kSomeHours = 3600.0 * 24 * 7;  // a week in a year moves no ground
constexpr double kNear = 3.0;                   // m from coil to what frost can harm; our own choice

bool frost_harms(const Feature& f) {
  return f.kind == FeatureKind::house || f.kind == FeatureKind::drain_field ||
         (f.kind == FeatureKind::utility && f.utility == UtilityKind::water);
}

std::vector<std::string> near_things(const Plan& plan, const Outcome& outcome) {
  std::vector<std::string> names;
  for (const Feature& f : plan.site.features) {
    if (!frost_harms(f)) continue;
    for (const Trench& t : outcome.layout.trenches)
      if (area_to_feature(outline(t), f) < kNear) {
        names.push_back(display_name(f));
        break;
      }
  }
  return names;
}

}  // namespace

// Latent heat is left out of the temperatures, so hours below freezing are counted on the safe side.
std::vector<Finding> ground_freezes(const Plan& plan, const Outcome& outcome) {
  const YearSum* y = last_year(outcome);
  const double frozen = y == nullptr ? 0 : 3600.0 * y->hours_wall_frozen;
  if (frozen <= kSomeHours) return {};
  const auto near = near_things(plan, outcome);
  Finding f = make_finding("ground_freezes", "", near.empty() ? Severity::hint : Severity::warning,
                           near.empty() ? say("Ground round the pipe freezes in winter")
                                        : say("Ground freezes near {}", joined(near)));
  set_measure(f, frozen, kSomeHours, Quantity::duration);
  f.advice = say(
      "Frozen ground can heave. Keep coils further from footings, water lines and drain fields, or lay more "
      "pipe.");
  f.source = say(
      "time of the pipe wall below 0 C in the last year, latent heat left out; common practice, no source");
  f.places = trench_places(outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
