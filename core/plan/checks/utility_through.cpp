// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

// A service may be drawn a step into the house it serves. m; our own choice, no source.
constexpr double kIntoHouse = 1.0;
// Casing and pit of a well; as near a line that ends there is drawn to it. m; our own choice, no source.
constexpr double kAtWell = 0.5;

bool ends_at(const Feature& line, const Feature& f) {
  if (f.points.size() < 3)
    return std::any_of(f.points.begin(), f.points.end(), [&](Point p) {
      return distance(p, line.points.front()) < kAtWell || distance(p, line.points.back()) < kAtWell;
    });
  return distance(f.points, line.points.front()) < kAtWell ||
         distance(f.points, line.points.back()) < kAtWell;
}

// Pump and alarm have a cable, the well a pipe; a sewer goes through its tank.
bool serves(const Feature& line, const Feature& f) {
  const UtilityKind u = line.utility;
  const bool cable = u == UtilityKind::electric || u == UtilityKind::communication;
  if (f.kind == FeatureKind::septic_tank) return u == UtilityKind::sewer || (cable && ends_at(line, f));
  return f.kind == FeatureKind::well && (cable || u == UtilityKind::water) && ends_at(line, f);
}

// m drawn inside an area, or missing to what a point asks.
double wrong_by(const Feature& line, const Feature& f) {
  if (f.kind == FeatureKind::well) return std::max(0.0, kAtWell - line_to_feature(line.points, f));
  if (f.kind != FeatureKind::house && f.kind != FeatureKind::septic_tank) return 0;
  const double inside = length_inside(line.points, f.points);
  return f.kind == FeatureKind::house && inside <= kIntoHouse ? 0 : inside;
}

}  // namespace

std::vector<Finding> utility_through(const Plan& plan, const Outcome&) {
  std::vector<Finding> findings;
  for (const Feature& line : plan.site.features) {
    if (line.kind != FeatureKind::utility || line.points.size() < 2) continue;
    for (const Feature& f : plan.site.features) {
      if (serves(line, f) || wrong_by(line, f) <= kCheckTolerance) continue;
      Finding made =
          make_finding("utility_through", feature_part(line) + "/" + feature_part(f), Severity::warning,
                       say("{} goes through {}: is it drawn right?", display_name(line), display_name(f)));
      set_measure(made, wrong_by(line, f), 0);
      made.advice = say(
          "Have the line located and marked, then draw it where the marks are; dig nothing on the strength "
          "of this line.");
      made.source = say("no line is laid through a tank, a well or a house: common practice, no source");
      made.places = {line.points};
      findings.push_back(std::move(made));
    }
  }
  return findings;
}

}  // namespace underlawn::checks
