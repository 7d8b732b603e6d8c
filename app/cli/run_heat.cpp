// SPDX-License-Identifier: GPL-3.0-or-later
// The step response and the hours of the loop as tables.
#include <sstream>

#include "base/say.h"
#include "base/table_text.h"
#include "cli/plan_in.h"
#include "cli/text_out.h"
#include "cli/verbs.h"
#include "plan/solve.h"
#include "thermal/loop_geometry.h"

namespace underlawn::cli {

namespace {

constexpr const char* kUsualTimes = "1h,6h,1d,7d,30d,180d,365d,1825d,3650d,9125d";
constexpr double kLongest = 1000.0 * 365 * 86'400;  // s

// "1h,30d" in seconds; complains of what is no time.
std::optional<std::vector<double>> times_in(const std::string& text, const Console& console) {
  std::vector<double> times;
  std::istringstream words(text);
  for (std::string word; std::getline(words, word, ',');) {
    const auto t = parse_quantity(Quantity::duration, word, UnitSystem::metric);
    if (!t || !(*t > 0 && *t <= kLongest)) {
      console.complain("--times",
                       t ? say("“{}” is no time above 0 and up to 1000 years.", word) : t.error().message());
      return std::nullopt;
    }
    times.push_back(*t);
  }
  return times;
}

// The plan's outcome, where it has temperatures; complains where not.
std::optional<Outcome> solved(const Plan& plan, const std::string& path, const Console& console) {
  Outcome outcome = solve(plan);
  console.complain(path, outcome.troubles);
  if (outcome.temperatures != nullptr) return outcome;
  console.complain(path, say("There are no temperatures: nothing is laid, or what is asked is not sound."));
  return std::nullopt;
}

std::string response_table(const Plan& plan, const Outcome& outcome, const std::vector<double>& times) {
  const SoilThermal& soil = outcome.surroundings->soil;
  KernelShelf shelf;
  const StepResponse r = step_response_of(pipes_in_ground(outcome.layout, plan.wishes),
                                          soil.conductivity * plan.thermal.surface_resistance, shelf);
  std::string table = "time_s,response_mk_w\n";
  for (double t : times)
    table += shortest(t) + "," + shortest(r(soil.conductivity, soil.diffusivity(), t)) + "\n";
  return table;
}

const std::vector<HourState>* hours_of(const Simulation& s, const std::string& year) {
  if (year == "first") return &s.first;
  if (year == "tenth") return &s.tenth;
  return year == "last" ? &s.last : nullptr;
}

std::string hours_table(const Outcome& outcome, const std::vector<HourState>& hours) {
  const Surroundings& s = *outcome.surroundings;
  const auto at = [](const std::vector<double>& values, std::size_t h) {
    return h < values.size() ? shortest(values[h]) : std::string();
  };
  std::string table =
      "hour,outdoor_c,heating_w,cooling_w,ground_c,ground_heat_w,entering_c,leaving_c,power_w,backup_w,"
      "unmet_cooling_w\n";
  for (std::size_t h = 0; h < hours.size(); ++h) {
    const HourState& x = hours[h];
    table += std::to_string(h) + "," + at(s.weather.outdoor, h) + "," + at(s.house.heating, h) + "," +
             at(s.house.cooling, h) + "," + at(outcome.temperatures->ground, h);
    for (double value : {x.ground_heat, x.entering, x.leaving, x.power, x.backup, x.unmet_cooling})
      table += "," + shortest(value);
    table += "\n";
  }
  return table;
}

}  // namespace

Exit run_response(const Arguments& arguments, const Console& console) {
  const auto times = times_in(arguments.value("--times").value_or(kUsualTimes), console);
  if (!times) return Exit::usage;
  const auto plan = plan_in(arguments.places[0], console);
  if (!plan) return Exit::not_read;
  const auto outcome = solved(*plan, arguments.places[0], console);
  if (!outcome) return Exit::errors_remain;
  return put(response_table(*plan, *outcome, *times), arguments, console);
}

Exit run_hours(const Arguments& arguments, const Console& console) {
  const auto plan = plan_in(arguments.places[0], console);
  if (!plan) return Exit::not_read;
  const auto outcome = solved(*plan, arguments.places[0], console);
  if (!outcome) return Exit::errors_remain;
  const std::string year = arguments.value("--year").value_or("last");
  const auto* hours = hours_of(outcome->temperatures->simulation, year);
  if (hours == nullptr || hours->empty()) {
    console.complain("--year", say("“{}” is not first, tenth or last, or the design life is shorter.", year));
    return Exit::usage;
  }
  return put(hours_table(*outcome, *hours), arguments, console);
}

}  // namespace underlawn::cli
