// SPDX-License-Identifier: GPL-3.0-or-later
// The order of digging and the crew's calendar.
#include "dig/dig_order.h"

#include "base/say.h"
#include "cost/crew_calendar.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

constexpr const char* kHeap =
    mark("triangular heap: Nunnally, Construction Methods and Management, sec. 2-5");
constexpr const char* kShop = mark("flow shop of stations with several hands, after Johnson 1954");

std::vector<std::string> there(const Figures& all, std::initializer_list<const char*> keys) {
  std::vector<std::string> found;
  for (const char* key : keys)
    if (all.find(key) != nullptr) found.emplace_back(key);
  return found;
}

void add_asked(Figures& all, const Plan& plan) {
  const DigWishes& d = plan.dig;
  typed(all, "order.spoil_off", say("Spoil off the edge of the trench"), d.spoil_off, Q::length);
  typed(all, "order.machine_width", say("Width of the machine"), d.excavator.width, Q::length);
  typed(all, "order.machine_reach", say("Reach of the machine at the ground"), d.excavator.reach, Q::length);
  typed(all, "order.machine_depth", say("Digging depth of the machine"), d.excavator.depth, Q::length);
  const CrewWishes& c = plan.crew;
  const std::pair<const char*, std::pair<std::string, int>> hands[] = {
      {"crew.excavators", {say("Excavators"), c.excavators}},
      {"crew.racks", {say("Coil racks"), c.racks}},
      {"crew.coils_ready", {say("Coils made before the first day"), c.coils_ready}},
      {"crew.laying_crews", {say("Laying crews"), c.laying_crews}},
      {"crew.joiners", {say("Joiners"), c.joiners}}};
  for (const auto& [key, value] : hands) typed(all, key, value.first, value.second, Q::count);
  typed(all, "crew.rain_slack", say("Reserve for rain, of the days worked"), c.rain_slack, Q::ratio);
}

// Key of the earth of a step: that of its part.
std::string earth_key(const DigStep& step) {
  if (step.kind == DigKind::trench) return "dig." + trench_key(step.trench) + ".loose_volume";
  return std::string("dig.") + (step.kind == DigKind::header ? "header" : "run") + ".loose_volume";
}

void add_step(Figures& all, const DigStep& step, const std::string& key, const std::string& name) {
  if (step.hauled) return;
  std::vector<std::string> from = {"ground.repose"};
  if (all.find(earth_key(step)) != nullptr) from.push_back(earth_key(step));
  derived(all, key + ".spoil_width", say("{}, width of its heap", name), step.heap.width, Q::length,
          {say("B = sqrt(4 V/(L tan R)), L the length along which it has room"), from, translated(kHeap)});
  derived(all, key + ".spoil_height", say("{}, height of its heap", name), step.heap.height, Q::length,
          {say("(B/2) tan R"), {key + ".spoil_width", "ground.repose"}, translated(kHeap)});
  derived(all, key + ".cast", say("{}, from its middle to that of its heap", name), step.cast, Q::length,
          {say("top width/2 + distance off the edge + B/2"), {key + ".spoil_width", "order.spoil_off"}, ""});
}

void add_order(Figures& all, const DigOrder& order) {
  int n = 0, ladders = 0;
  double way = 0;
  for (const DigStep& step : order.steps) {
    const std::string number = std::to_string(++n);
    add_step(all, step, "order.step." + number, number + ". " + step_name(step));
    ladders += static_cast<int>(step.ladders.size());
    for (std::size_t i = 1; i < step.way.size(); ++i) way += distance(step.way[i - 1], step.way[i]);
  }
  derived(all, "order.steps", say("Steps of digging"), n, Q::count,
          {say("trenches, parts of header and run"), there(all, {"layout.circuits_placed"}), ""});
  derived(all, "order.filled_early", say("Coil trenches filled before the loop is tested"),
          order.filled_early, Q::count,
          {say("where a heap has no room beside the next trench"), {"order.steps"}, ""});
  derived(all, "order.hauled", say("Steps whose spoil has no place on the lot"), order.hauled, Q::count,
          {say("search over orders, sides and directions"), {"order.steps"}, ""});
  derived(all, "order.ladders", say("Ladders"), ladders, Q::count,
          {say("from 4 ft of depth, none farther than 25 ft, where people go in"),
           {"order.steps"},
           "29 CFR 1926.651(c)(2)"});
  derived(all, "order.way", say("Way of the machine between the steps"), way, Q::length,
          {say("shortest ways round what stands, lies open and is heaped"),
           {"order.steps", "order.machine_width"},
           ""});
}

void add_calendar(Figures& all, const DigOrder& order, const CrewCalendar& c) {
  const auto days = [&](double time) { return days_of(time, c.day_length); };
  const auto from = there(all, {"days.digging", "days.coil_making", "days.coil_laying", "crew.excavators",
                                "crew.racks", "crew.coils_ready", "crew.laying_crews", "crew.day_length"});
  derived(all, "calendar.dug", say("Everything dug, working days from the start"), days(c.dug), Q::count,
          {say("stations in the order of digging"), from, translated(kShop)});
  derived(all, "calendar.joined", say("Joints made, working days from the start"), days(c.joined), Q::count,
          {say("after the last trench and the last coil"),
           there(all, {"calendar.dug", "days.laid", "days.joining", "crew.joiners"}), translated(kShop)});
  derived(all, "calendar.tested", say("Tested, working days from the start"), days(c.tested), Q::count,
          {say("filling, flushing and test within one day, before joints are covered"),
           there(all, {"calendar.joined", "days.testing"}), translated(kShop)});
  derived(
      all, "calendar.filled", say("Everything filled in, working days from the start"), days(c.filled),
      Q::count,
      {say("the loader after the test"), there(all, {"calendar.tested", "days.filling"}), translated(kShop)});
  derived(all, "calendar.days", say("Days on the lot"), c.days_worked, Q::count,
          {say("whole days begun"), {"calendar.filled"}, ""});
  derived(all, "calendar.reserve", say("Days in reserve for rain"),
          static_cast<double>(c.days.size()) - c.days_worked, Q::count,
          {say("days x reserve, whole days begun"), {"calendar.days", "crew.rain_slack"}, ""});
  for (const OpenTrench& o : c.open) {
    const DigStep& step = order.steps[static_cast<std::size_t>(o.step)];
    derived(all, "calendar.open." + std::to_string(o.step + 1),
            say("{} lies open, by the clock", step_name(step)), o.clock, Q::duration,
            {say("from its first bucket until it is filled, nights and days off included"),
             {"calendar.filled"},
             ""});
  }
  for (const StationLoad& s : c.stations) {
    const std::string key = "calendar.waits." + std::string(station_key(s.station));
    derived(all, key, say("{}: waiting, working time", station_name(s.station)), s.waited, Q::duration,
            {say("between its first task and its last"), {"calendar.filled"}, translated(kShop)});
  }
  int n = 0;
  for (const CrewSaving& s : c.savings)
    derived(all, "calendar.saving." + std::to_string(++n), say("{} saves, working days", s.what), s.days,
            Q::count, {say("the calendar made again with it"), {"calendar.filled"}, translated(kShop)});
}

}  // namespace

void add_dig_order(Figures& all, const Plan& plan, const Outcome& outcome) {
  if (outcome.order == nullptr || outcome.order->steps.empty()) return;
  add_asked(all, plan);
  add_order(all, *outcome.order);
  if (outcome.calendar != nullptr && !outcome.calendar->tasks.empty())
    add_calendar(all, *outcome.order, *outcome.calendar);
}

}  // namespace underlawn::figures
