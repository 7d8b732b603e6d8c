// SPDX-License-Identifier: GPL-3.0-or-later
#include <numbers>

#include "base/say.h"
#include "base/typed_text.h"
#include "base/wording.h"
#include "dig/dates.h"
#include "plan/bounded_number.h"
#include "plan/plan_troubles.h"

namespace underlawn {

namespace {

constexpr double kPi = std::numbers::pi;

std::vector<BoundedNumber> machine_numbers(const Machine& m, const std::string& key, const std::string& name,
                                           bool digs) {
  const Quantity length = Quantity::length;
  std::vector<BoundedNumber> numbers = {
      {say("{} bucket", name), Quantity::volume, m.bucket, 0, 50, true,
       say("Enter what the bucket holds, heaped."), key + " bucket"},
      {say("{} bucket fill", name), Quantity::ratio, m.fill, 0.1, 2, false, say("60 to 115 % is usual."),
       key + " bucket fill"},
      {say("{} cycle", name), Quantity::duration, m.cycle, 1, 3600, false,
       say("Enter the seconds from one bucket to the next."), key + " cycle"},
      {say("{} efficiency", name), Quantity::ratio, m.efficiency, 0.01, 1, false,
       say("Enter the share of the hour that it works; 40 to 83 % is usual."), key + " efficiency"},
      {say("{} width", name), length, m.width, 0, 20, true, say("Enter the width over its tracks or wheels."),
       key + " width"}};
  if (!digs) return numbers;
  numbers.push_back({say("{} reach", name), length, m.reach, 0, 40, true,
                     say("Enter how far it reaches at the ground."), key + " reach"});
  numbers.push_back(
      {say("{} depth", name), length, m.depth, 0, 30, true, say("Enter how deep it digs."), key + " depth"});
  return numbers;
}

std::vector<BoundedNumber> crew_numbers(const CrewWishes& c) {
  const Quantity time = Quantity::duration, count = Quantity::count;
  const auto people = [&](const std::string& thing, int n) {
    return BoundedNumber{thing, count, static_cast<double>(n),          1,
                         20,    false, say("Enter how many there are.")};
  };
  const auto rate = [&](const std::string& thing, double value, double least) {
    return BoundedNumber{
        thing, time, value, least, 30 * 86400.0, false, say("Enter the working time it takes.")};
  };
  return {
      {mark("Start of work"), time, c.begins, 0, 86400 - 600, false, say("Enter the time of day.")},
      {mark("Hours worked a day"), time, c.day_length, 3600, 86400, false,
       say("Enter the hours that the crew works.")},
      {mark("Rain reserve"), Quantity::ratio, c.rain_slack, 0, 5, false, say("Enter the share of the days.")},
      people(mark("Excavators"), c.excavators),
      people(mark("Coil racks"), c.racks),
      people(mark("Laying crews"), c.laying_crews),
      people(mark("Joiners"), c.joiners),
      people(mark("Trucks"), c.trucks),
      {mark("Load of a truck"), Quantity::volume, c.truck_load, 0.1, 100, false,
       say("Enter the loose earth that one carries.")},
      {mark("Trip of a truck"), time, c.truck_trip, 60, 86400, false,
       say("Enter the time there and back, loading and tipping included.")},
      {mark("Coils ready"), count, static_cast<double>(c.coils_ready), 0, 200, false,
       say("Enter how many coils are made before the first day.")},
      rate(mark("Trenching time a metre"), c.trencher, 0.1),
      rate(mark("Time a line met by hand"), c.hand_crossing, 0),
      rate(mark("Coil making time a metre"), c.coil_making, 0),
      rate(mark("Straight pipe time a metre"), c.straight_making, 0),
      rate(mark("Laying time a metre"), c.coil_laying, 0),
      rate(mark("Header laying time a metre"), c.header_laying, 0),
      rate(mark("Time a joint"), c.joint_making, 0),
      rate(mark("Filling and flushing time"), c.test_filling, 0)};
}

void check_crew(std::vector<Trouble>& troubles, const Plan& plan) {
  const DigWishes& d = plan.dig;
  check_numbers(troubles, plan, machine_numbers(d.excavator, "excavator", say("Excavator"), true));
  check_numbers(troubles, plan, machine_numbers(plan.crew.loader, "loader", say("Loader"), false));
  check_numbers(troubles, plan, crew_numbers(plan.crew));
  check_numbers(troubles, plan,
                {{mark("Spoil distance from the edge"), Quantity::length, d.spoil_off, 0, 20, false,
                  say("At least 0.61 m (2 ft) by 29 CFR 1926.651(j)(2).")}});
  if (d.slope)
    check_numbers(troubles, plan,
                  {{mark("Side slope"), Quantity::slope, *d.slope, 0, 10, false,
                    say("Enter the run for each unit of depth.")}});
  if (d.access) check_places(troubles, plan, {*d.access}, say("Machine access"));
  if (d.laydown) check_places(troubles, plan, {*d.laydown}, say("Pipe laydown"));
  if (!is_weekdays(plan.crew.weekdays))
    troubles.push_back({"weekdays_unreadable", say("Days worked"), in_quotes(plan.crew.weekdays),
                        say("digits 1 (Monday) to 7 (Sunday), rising, at least one"),
                        say("\"12345\" is Monday to Friday.")});
  if (!plan.crew.start.empty() && !day_number(plan.crew.start))
    troubles.push_back({"start_date_unreadable", say("First day of digging"), in_quotes(plan.crew.start),
                        say("a date as 2026-05-18 between 1900 and 9999"),
                        say("Leave it empty to count days only.")});
}

}  // namespace

std::vector<Trouble> ground_troubles(const Plan& plan) {
  const Ground& g = plan.ground;
  std::vector<Trouble> troubles;
  check_numbers(troubles, plan,
                {{mark("Swell"), Quantity::ratio, g.swell, 0, 2, false,
                  say("Loose volume above bank volume; common earth 25 %.")},
                 {mark("Shrinkage"), Quantity::ratio, g.shrinkage, -0.5, 0.9, false,
                  say("Bank volume lost in compaction; common earth 10 %, less than 0 for rock.")},
                 {mark("Angle of repose"), Quantity::angle, g.repose, 5 * kPi / 180, 80 * kPi / 180, false,
                  say("Enter the angle at which the spoil lies; moist earth 37 degrees.")},
                 {mark("Frost depth"), Quantity::length, g.frost_depth, 0, 10, false,
                  say("Ask the building department.")}});
  check_crew(troubles, plan);
  return troubles;
}

}  // namespace underlawn
