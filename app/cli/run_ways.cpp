// SPDX-License-Identifier: GPL-3.0-or-later
// Other ways to lay the loop, as a table or as JSON.

#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/plan_in.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "files/json_points.h"
#include "plan/fingerprint.h"
#include "plan/solve.h"
#include "plan/ways.h"

namespace underlawn::cli {

namespace {

std::vector<std::string> row_of(const Way& w, const Plan& plan) {
  const auto shown = [&](Quantity q, double v, Fineness f = Fineness::coarse) {
    return print_quantity(q, v, plan.units, f);
  };
  const auto water = [&](const std::optional<double>& t) {
    return t ? shown(Quantity::temperature, *t, Fineness::normal) : std::string("-");
  };
  return {w.sentence,
          std::to_string(w.circuits),
          shown(Quantity::length, w.trench),
          shown(Quantity::money, w.cost),
          shown(Quantity::volume, w.bank),
          shown(Quantity::count, w.days, Fineness::normal),
          shown(Quantity::area, w.lawn),
          water(w.coldest),
          water(w.warmest),
          !w.coldest ? "-"
          : w.holds  ? say("yes")
                     : say("no")};
}

void tell(const std::vector<Way>& ways, const Plan& plan, std::ostream& out) {
  std::vector<std::vector<std::string>> rows = {
      {"", say("circuits"), say("trench"), plan.wishes.prices.currency, say_as("earth", "dug"), say("days"),
       say("lawn"), say_as("water", "coldest"), say_as("water", "warmest"), say("holds limits")}};
  for (const Way& w : ways) rows.push_back(row_of(w, plan));
  tell_table(rows, out);
  out << "\n"
      << say("Sides vertical; prices are the plan's own; days are working days of 8 h with the lot open.")
      << "\n";
}

Json trench_json(const Trench& t) {
  Json j{{"head_m", to_json(t.head)}, {"end_m", to_json(t.end)}, {"width_m", t.width}, {"depth_m", t.depth}};
  if (!t.bends.empty()) j["bends_m"] = to_json(t.bends);
  return j;
}

Json way_json(const Way& w) {
  Json j{{"kind", way_kind_name(w.kind)},
         {"sentence", w.sentence},
         {"circuits", w.circuits},
         {"trench_m", w.trench},
         {"cost_money", w.cost},
         {"bank_m3", w.bank},
         {"days", w.days},
         {"lawn_m2", w.lawn}};
  if (w.coldest) {
    j["coldest_c"] = *w.coldest;
    j["warmest_c"] = *w.warmest;
    j["holds_limits"] = w.holds;
    j["beyond_limits_k"] = w.short_by;
  }
  j["trenches"] = Json::array();
  for (const Trench& t : w.layout.trenches) j["trenches"].push_back(trench_json(t));
  return j;
}

Json ways_json(const std::vector<Way>& ways, const Plan& plan) {
  Json j{{"plan", fingerprint(plan)}, {"currency", plan.wishes.prices.currency}, {"ways", Json::array()}};
  for (const Way& w : ways) j["ways"].push_back(way_json(w));
  return j;
}

bool any_laid(const std::vector<Way>& ways) {
  for (const Way& w : ways)
    if (w.circuits > 0) return true;
  return false;
}

}  // namespace

Exit run_ways(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto plan = plan_in(path, console);
  if (!plan) return Exit::not_read;
  const std::vector<Way> ways = ways_of(*plan);
  if (ways.empty()) {
    const Outcome outcome = solve(*plan);
    for (const Trouble& t : outcome.troubles) console.complain(path, t.message());
    if (outcome.troubles.empty())
      console.complain(path, say("No lot line is drawn, so nothing can be laid."));
    return Exit::errors_remain;
  }
  if (arguments.has("--json"))
    console.out << (spoken_here() == nullptr ? json_to_text(ways_json(ways, *plan)) : in_english([&] {
      return json_to_text(ways_json(ways_of(*plan), *plan));
    }));
  else
    tell(ways, *plan, console.out);
  return any_laid(ways) ? Exit::ok : Exit::errors_remain;
}

}  // namespace underlawn::cli
