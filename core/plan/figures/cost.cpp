// SPDX-License-Identifier: GPL-3.0-or-later
// How long the loop lies open.
#include <algorithm>

#include "base/say.h"
#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "flow/coil_hold.h"
#include "flow/loop_test.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

void add_amounts(Figures& all, const Outcome& outcome) {
  derived(all, "cost.met_by_hand", say("Lines met by hand"), outcome.work->met_by_hand, Q::count,
          {say("crossings of header and run with utilities"), {"layout.crossings"}, ""});
  std::vector<std::string> cut;
  for (const char* key : {"header.length", "run.length"})
    if (all.find(key) != nullptr) cut.emplace_back(key);
  cut.emplace_back("dig.run_width");
  derived(all, "cost.pavement_area", say("Pavement cut"), outcome.work->torn.pavement, Q::area,
          {say("area of header and run trench inside drives, at the ground"), cut, ""});
  std::vector<std::string> coils;
  double pipe = 0;
  for (const Trench& t : outcome.layout.trenches) {
    coils.push_back(trench_key(t.number) + ".coil_length");
    pipe += t.coil.coil_length;
  }
  derived(all, "cost.pipe_in_coils", say("Pipe in coils"), pipe, Q::length,
          {say("sum over the trenches"), coils, ""});
}

void add_rates(Figures& all, const DigWishes& dig, const CrewWishes& crew) {
  typed(all, "crew.day_length", say("Worked a day"), crew.day_length, Q::duration);
  typed(all, "crew.excavator_rate", say("Loose earth the excavator moves in an hour"),
        loose_rate(dig.excavator) * 3600, Q::volume);
  typed(all, "crew.loader_rate", say("Loose earth the loader moves in an hour"),
        loose_rate(crew.loader) * 3600, Q::volume);
  typed(all, "crew.trencher", say("Trenching a metre less than 1 ft wide"), crew.trencher, Q::duration);
  typed(all, "crew.hand_crossing", say("A line found and dug round by hand"), crew.hand_crossing,
        Q::duration);
  typed(all, "crew.coil_making", say("Making a metre of coil"), crew.coil_making, Q::duration);
  typed(all, "crew.straight_making", say("Making ready a metre of straight pipe"), crew.straight_making,
        Q::duration);
  typed(all, "crew.coil_laying", say("Laying a coil, by metre of trench"), crew.coil_laying, Q::duration);
  typed(all, "crew.header_laying", say("Laying a metre of header or run"), crew.header_laying, Q::duration);
  typed(all, "crew.joint_making", say("Fusing a joint"), crew.joint_making, Q::duration);
  typed(all, "crew.test_filling", say("Filling, flushing and bringing to pressure"), crew.test_filling,
        Q::duration);
}

int coils_proved(const Outcome& outcome) {
  if (outcome.calendar == nullptr) return 0;
  const auto& tasks = outcome.calendar->tasks;
  return static_cast<int>(std::count_if(tasks.begin(), tasks.end(), [](const CrewTask& task) {
    return task.station == CrewStation::testing && task.step >= 0;
  }));
}

// `test`: s of the whole loop's test; `proved`: coils tested alone, before the loop.
void add_stages(Figures& all, const CrewTime& t, const CrewWishes& crew, double test, int proved) {
  const auto days = [&](double time) { return days_of(time, crew.day_length); };
  const std::string rates =
      say("{}; sizes and cycles {}", translated(kProductionSource), translated(kCommonPractice));
  derived(all, "days.digging", say("Digging, working days"), days(t.digging), Q::count,
          {say("excavated x (1 + swell)/excavator's rate, by trencher below 1 ft of width, and lines met by "
               "hand"),
           {"dig.total.bank_volume", "ground.swell", "crew.excavator_rate", "crew.trencher",
            "cost.met_by_hand", "crew.hand_crossing", "crew.day_length"},
           rates});
  derived(all, "days.coil_making", say("Making the coils, working days"), days(t.making), Q::count,
          {say("metres of pipe x time a metre, that of straight pipe where there are no loops"),
           {"cost.pipe_in_coils", "crew.coil_making", "crew.straight_making", "crew.day_length"},
           translated(kCommonPractice)});
  derived(all, "days.coil_laying", say("Laying the coils, working days"), days(t.laying), Q::count,
          {say("metres of trench x time a metre"),
           {"coil.trench_length", "layout.circuits_placed", "crew.coil_laying", "crew.day_length"},
           translated(kCommonPractice)});
  derived(all, "days.laid", say("Last coil laid, working days from the start"), days(t.laid), Q::count,
          {say("by the crew calendar: a coil is laid when it is made, its trench is dug and a crew is free"),
           {"days.digging", "days.coil_making", "days.coil_laying"},
           say("flow shop of two stations, Johnson 1954; set-up at the second apart")});
  derived(all, "days.waiting", say("Coil crew waiting for trenches, working days"), days(t.waiting), Q::count,
          {say("sum over the trenches"), {"days.laid"}, ""});
  std::vector<std::string> joining = {"layout.joints", "crew.joint_making", "crew.header_laying",
                                      "crew.day_length"};
  for (const char* key : {"header.length", "run.length"})
    if (all.find(key) != nullptr) joining.emplace_back(key);
  derived(all, "days.joining", say("Header, run and joints, working days"), days(t.joining), Q::count,
          {say("metres of header and run x time a metre + joints x time a joint"), joining,
           translated(kCommonPractice)});
  typed(all, "test.duration", say("Pressure test, from pumping to the last reading"), test, Q::duration);
  typed(all, "crew.coil_proving", say("A coil alone filled and held under pressure"),
        kCoilFilled + kCoilProved, Q::duration);
  derived(all, "days.coils_proved", say("Coils held under pressure before they are covered"), proved,
          Q::count, {say("those covered before the loop is tested"), {"layout.circuits_placed"}, ""});
  derived(
      all, "days.testing", say("Filling and pressure test, working days"), days(t.testing), Q::count,
      {say("filling and flushing + the test's holds, before joints are covered, + what each coil alone "
           "takes"),
       {"crew.test_filling", "test.duration", "crew.coil_proving", "days.coils_proved", "crew.day_length"},
       translated(kCommonPractice)});
  derived(all, "days.filling", say("Filling in, working days"), days(t.filling), Q::count,
          {say("(backfill/(1 - shrinkage) x (1 + swell) + bedding)/loader's rate"),
           {"dig.total.backfill_volume", "dig.total.bedding_volume", "ground.shrinkage", "ground.swell",
            "crew.loader_rate", "crew.day_length"},
           rates});
  derived(all, "days.open", say("Open on the lot, working days"), days(t.open), Q::count,
          {say("by the crew calendar: digging, coils, joints, test, filling in"),
           {"days.digging", "days.laid", "days.joining", "days.testing", "days.filling"},
           ""});
  derived(all, "days.paid", say("Days of crew and machine"), t.days, Q::count,
          {say("open on the lot, in whole days begun"), {"days.open"}, ""});
}

void add_hauling(Figures& all, const CrewTime& t, const CrewWishes& crew) {
  typed(all, "crew.trucks", say("Trucks"), crew.trucks, Q::count);
  typed(all, "crew.truck_load", say("Loose earth on a truck"), crew.truck_load, Q::volume);
  typed(all, "crew.truck_trip", say("A truck's way there and back"), crew.truck_trip, Q::duration);
  derived(all, "days.hauling", say("Trucks on the job, working days of all"),
          days_of(t.hauling, crew.day_length), Q::count,
          {say("trucks x (digging of those steps + bringing back their backfill), neither sooner than load "
               "x trucks/trip allows"),
           {"crew.trucks", "order.hauled_volume", "crew.truck_load", "crew.truck_trip", "crew.day_length"},
           say("Nunnally, Construction Methods and Management (from memory)")});
}

}  // namespace

void add_cost(Figures& all, const Plan& plan, const Outcome& outcome) {
  if (!outcome.work || outcome.order == nullptr) return;
  add_amounts(all, outcome);
  add_rates(all, plan.dig, plan.crew);
  add_stages(all, outcome.work->time, plan.crew, test_duration(plan.test.procedure), coils_proved(outcome));
  derived(all, "order.hauled_volume", say("Loose earth trucked off"), hauled_loose(*outcome.order), Q::volume,
          {say("sum over the steps whose spoil has no place on the lot"), {"dig.total.loose_volume"}, ""});
  if (outcome.order->hauled > 0) add_hauling(all, outcome.work->time, plan.crew);
}

}  // namespace underlawn::figures
