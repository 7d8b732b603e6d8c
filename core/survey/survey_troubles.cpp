// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/survey_troubles.h"

#include <cmath>
#include <numbers>
#include <set>

#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"
#include "plane/region.h"

namespace underlawn {

namespace {

class Checked {
 public:
  Checked(std::vector<Trouble>& troubles, UnitSystem units) : troubles_(troubles), units_(units) {}

  void number(const std::string& code, std::string thing, Quantity q, double value, double low, double high,
              std::string advice) {
    if (value >= low && value <= high) return;
    troubles_.push_back({code + "_out_of_bounds", std::move(thing), shown(q, value),
                         say("from {} to {}", shown(q, low), shown(q, high)), std::move(advice)});
  }
  void place(const std::string& thing, Point p) {
    const std::string advice = say("Move the point back.");
    number("point", say("{} x", thing), Quantity::length, p.x, -kLargestPlan, kLargestPlan, advice);
    number("point", say("{} y", thing), Quantity::length, p.y, -kLargestPlan, kLargestPlan, advice);
  }
  void on_earth(const std::string& thing, double latitude, double longitude) {
    number("latitude", say("{} latitude in degrees", thing), Quantity::count, latitude, -90, 90,
           say("North of the equator it is more than 0."));
    number("longitude", say("{} longitude in degrees", thing), Quantity::count, longitude, -180, 180,
           say("West of Greenwich it is less than 0."));
  }

 private:
  std::string shown(Quantity q, double value) const {
    if (!std::isfinite(value)) return std::isnan(value) ? say("not a number") : say("infinite");
    return q == Quantity::count ? shortest(value) : print_quantity(q, value, units_, Fineness::fine);
  }

  std::vector<Trouble>& troubles_;
  UnitSystem units_;
};

void check_sighting(Checked& checked, const Sighting& s) {
  const std::string thing = say("Notebook point {}", in_quotes(s.name));
  const std::string advice = say("Enter it again as it stands in the notebook.");
  const auto length = [&](const std::string& what, double value) {
    checked.number("sighting", what, Quantity::length, value, -kMostSighted, kMostSighted, advice);
  };
  length(say("{} first distance", thing), s.first);
  length(say("{} second distance", thing), s.second);
  length(say("{} east", thing), s.east);
  length(say("{} north", thing), s.north);
  length(say_as("of a notebook point", "{} height", thing), s.height.value_or(0));
  checked.number("sighting_bearing", say("{} bearing", thing), Quantity::angle, s.bearing,
                 -4 * std::numbers::pi, 4 * std::numbers::pi, advice);
  checked.on_earth(thing, s.latitude, s.longitude);
}

void check_names(std::vector<Trouble>& troubles, const std::vector<Sighting>& notebook) {
  std::set<std::string> seen;
  for (const Sighting& s : notebook)
    if (s.name.empty() || !seen.insert(s.name).second)
      troubles.push_back(
          {"sighting_name", say("the name of a notebook point"),
           s.name.empty() ? say_as("a name", "empty") : say("{}, there twice", in_quotes(s.name)),
           say("there once and not empty"), say("Give it a name of its own.")});
}

}  // namespace

std::vector<Trouble> survey_troubles(const Survey& survey, UnitSystem units) {
  std::vector<Trouble> troubles;
  Checked checked(troubles, units);
  checked.place(say("Start of the deed"), survey.deed.start);
  checked.number("deed_turn", say("Turn of the deed's north"), Quantity::angle, survey.deed.turn,
                 -2 * std::numbers::pi, 2 * std::numbers::pi,
                 say("Enter an angle; 0 for the plan's own north."));
  checked.number("chord_tolerance", say("Tolerance of curves"), Quantity::length, survey.deed.chord_tolerance,
                 kLeastChordTolerance, kMostChordTolerance, say("Enter how far chords may lie off a curve."));
  for (const Sighting& s : survey.notebook) check_sighting(checked, s);
  check_names(troubles, survey.notebook);
  if (survey.grid) {
    for (double v : {survey.grid->east, survey.grid->north})
      checked.number("grid", say("Tie to the grid"), Quantity::length, v, -kMostSighted, kMostSighted,
                     say("Import the points again."));
    checked.place(say("Tie to the grid"), survey.grid->at);
  }
  return troubles;
}

}  // namespace underlawn
