// SPDX-License-Identifier: GPL-3.0-or-later
// Order of digging and crew calendar, as tables or as JSON.
#include <cmath>

#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/plan_in.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "cost/crew_calendar.h"
#include "dig/dig_words.h"
#include "dig/protection.h"
#include "files/json_text.h"
#include "plan/solve.h"

namespace underlawn::cli {

namespace {

std::string hours(double time, UnitSystem units) {
  return print_quantity(Quantity::count, std::round(time / 360) / 10, units) + " h";
}

std::string two(int n) {
  return (n < 10 ? "0" : "") + std::to_string(n);
}

// "day 2, 09:40"
std::string moment(const CrewCalendar& c, double t, bool end) {
  const int day = std::max(0, static_cast<int>(std::floor((t + (end ? -1e-6 : 1e-6)) / c.day_length)));
  const int minutes = static_cast<int>(std::lround((c.begins + t - day * c.day_length) / 60));
  const auto d = static_cast<std::size_t>(day);
  const std::string name =
      d < c.days.size() && !c.days[d].date.empty() ? c.days[d].date : say("day {}", std::to_string(day + 1));
  return name + " " + two(minutes / 60 % 24) + ":" + two(minutes % 60);
}

void tell_order(const DigOrder& order, const Plan& plan, std::ostream& out) {
  std::vector<std::vector<std::string>> rows = {
      {"", say_as("a column", "dig"), say_as("a column", "way"), say_as("a column", "sides"), say("spoil")}};
  int n = 0;
  for (const DigStep& s : order.steps) {
    const std::string spoil = spoil_words(s, plan.site, plan.units);
    rows.push_back({step_numeral(++n), step_name(s), way_of_digging(s), std::string(sides_name(s.sides)),
                    s.reached ? spoil : say("{}; no way for the machine", spoil)});
  }
  tell_table(rows, out);
}

void tell_calendar(const CrewCalendar& c, const DigOrder& order, const Plan& plan, std::ostream& out) {
  std::vector<std::vector<std::string>> rows = {
      {say("who"), say("task"), say_as("a time", "from"), say_as("a time", "to"), say("waited")}};
  for (const CrewTask& t : c.tasks)
    rows.push_back(
        {std::string(station_name(t.station)) + " " + std::to_string(t.who), task_words(t, order),
         moment(c, t.begin, false), moment(c, t.end, true),
         t.waited > 30 ? hours(t.waited, plan.units) + " " + std::string(wait_words(t.waited_for)) : ""});
  tell_table(rows, out);
  out << "\n"
      << say("Everything is dug after {} of work, laid after {}, filled in after {}: {} days, and {} in "
             "reserve for "
             "rain.",
             hours(c.dug, plan.units), hours(c.laid, plan.units), hours(c.filled, plan.units), c.days_worked,
             c.days.size() - static_cast<std::size_t>(c.days_worked))
      << "\n\n";
  std::vector<std::vector<std::string>> savings = {{say("one more"), say("days saved")}};
  for (const CrewSaving& s : c.savings)
    savings.push_back({s.what, print_quantity(Quantity::count, s.days, plan.units)});
  tell_table(savings, out);
}

Json line_json(const std::vector<Point>& line) {
  Json j = Json::array();
  for (Point p : line) j.push_back(Json::array({p.x, p.y}));
  return j;
}

Json step_json(const DigStep& s, const Plan& plan) {
  Json j{{"name", step_name(s)},
         {"way", way_of_digging(s)},
         {"spoil", spoil_words(s, plan.site, plan.units)},
         {"sides", sides_name(s.sides)},
         {"width_m", s.width},
         {"depth_m", s.depth},
         {"top_m", s.top},
         {"bank_m3", s.work.bank},
         {"loose_m3", s.work.loose},
         {"spoil_width_m", s.heap.width},
         {"hauled", s.hauled},
         {"reached", s.reached},
         {"into", s.into},
         {"line_m", line_json(s.line)},
         {"way_m", line_json(s.way)},
         {"truck_way_m", line_json(s.truck_way)},
         {"fill_way_m", line_json(s.fill_way)}};
  j["spoil_m"] = Json::array();
  for (const Ring& ring : s.spoil) j["spoil_m"].push_back(line_json(ring));
  if (!s.no_room.empty()) j["no_room"] = s.no_room;
  return j;
}

Json calendar_json(const CrewCalendar& c, const DigOrder& order, const Plan& plan) {
  Json j{{"days", c.days_worked}, {"day_length_s", c.day_length}, {"dug_s", c.dug},      {"laid_s", c.laid},
         {"joined_s", c.joined},  {"tested_s", c.tested},         {"filled_s", c.filled}};
  j["dates"] = Json::array();
  for (const CrewDay& d : c.days)
    if (!d.date.empty()) j["dates"].push_back({{"date", d.date}, {"reserve", d.reserve}});
  for (const char* list : {"order", "tasks", "stations", "savings"}) j[list] = Json::array();
  for (const DigStep& s : order.steps) j["order"].push_back(step_json(s, plan));
  for (const CrewTask& t : c.tasks)
    j["tasks"].push_back({{"station", station_name(t.station)},
                          {"who", t.who},
                          {"task", task_words(t, order)},
                          {"begin_s", t.begin},
                          {"end_s", t.end},
                          {"waited_s", t.waited},
                          {"waited_for", wait_words(t.waited_for)}});
  for (const StationLoad& s : c.stations)
    j["stations"].push_back({{"station", station_name(s.station)},
                             {"hands", s.hands},
                             {"busy_s", s.busy},
                             {"waited_s", s.waited},
                             {"mostly", wait_words(s.mostly)}});
  for (const CrewSaving& s : c.savings)
    j["savings"].push_back({{"what", s.what}, {"days", s.days}, {"working_s", s.working}});
  return j;
}

}  // namespace

Exit run_calendar(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto plan = plan_in(path, console);
  if (!plan) return Exit::not_read;
  const Outcome outcome = solve(*plan);
  if (outcome.calendar == nullptr || outcome.calendar->tasks.empty()) {
    for (const Trouble& t : outcome.troubles) console.complain(path, t.message());
    if (outcome.troubles.empty()) console.complain(path, say("Nothing is laid, so there is nothing to dig."));
    return Exit::errors_remain;
  }
  if (arguments.has("--json")) {
    console.out << for_programs(*plan, outcome, [](const Plan& p, const Outcome& o) {
      return json_to_text(calendar_json(*o.calendar, *o.order, p));
    });
  } else {
    tell_order(*outcome.order, *plan, console.out);
    console.out << "\n";
    tell_calendar(*outcome.calendar, *outcome.order, *plan, console.out);
  }
  return Exit::ok;
}

}  // namespace underlawn::cli
