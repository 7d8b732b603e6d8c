// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/plan_troubles.h"

#include <set>

#include "base/say.h"
#include "base/typed_text.h"
#include "base/wording.h"
#include "cost/pricing_troubles.h"
#include "dig/dates.h"
#include "field/straight.h"
#include "pipe/pipe_size.h"
#include "plan/record/record_troubles.h"
#include "plane/region.h"
#include "site/clearances.h"
#include "survey/survey_troubles.h"
#include "thermal/surroundings.h"

namespace underlawn {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kMuch = std::numeric_limits<double>::infinity();

// One number of the plan and what it may be.
struct Number {
  std::string thing;  // as marked: the code is made of its English
  Quantity quantity;
  double value;
  double low, high;
  bool above_low;  // must be more than `low`, not only as much
  std::string advice;
  std::string kind = {};  // stands for `thing` in the code, where that carries a name the designer gave
};

std::string code_of(const std::string& thing) {
  std::string code;
  for (char c : thing) {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0)
      code += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    else if (!code.empty() && code.back() != '_')
      code += '_';
  }
  return code + "_out_of_bounds";
}

std::string shown(const Number& n, double value, UnitSystem units) {
  if (std::isnan(value)) return say("not a number");
  if (std::isinf(value)) return value > 0 ? say("infinite") : say("minus infinite");
  return print_quantity(n.quantity, value, units, Fineness::fine);
}

std::string bound_of(const Number& n, UnitSystem units) {
  if (n.low == -kMuch) return say("a finite number");
  const std::string low = shown(n, n.low, units);
  return n.above_low ? say("more than {} and at most {}", low, shown(n, n.high, units))
                     : say("from {} to {}", low, shown(n, n.high, units));
}

bool in_bounds(const Number& n) {
  return std::isfinite(n.value) && n.value <= n.high && (n.above_low ? n.value > n.low : n.value >= n.low);
}

void check(std::vector<Trouble>& troubles, const Plan& plan, const std::vector<Number>& numbers) {
  for (const Number& n : numbers)
    if (!in_bounds(n))
      troubles.push_back({code_of(n.kind.empty() ? n.thing : n.kind), translated(n.thing),
                          shown(n, n.value, plan.units), bound_of(n, plan.units), n.advice});
}

// ---- the site ----

void check_ring(std::vector<Trouble>& troubles, const Ring& ring, const std::string& name) {
  if (auto checked = checked_ring(ring, name); !checked) troubles.push_back(checked.error());
}

void check_places(std::vector<Trouble>& troubles, const Plan& plan, const std::vector<Point>& points,
                  const std::string& name) {
  for (Point p : points) {
    const std::size_t before = troubles.size();
    check(troubles, plan,
          {{say("{} point x", name), Quantity::length, p.x, -kLargestPlan, kLargestPlan, false,
            say("Move the point back."), "point"},
           {say("{} point y", name), Quantity::length, p.y, -kLargestPlan, kLargestPlan, false,
            say("Move the point back."), "point"}});
    if (troubles.size() > before) return;  // one such point tells enough
  }
}

void check_count(std::vector<Trouble>& troubles, const Feature& f) {
  const std::size_t n = f.points.size();
  const std::string thing = say("Number of points of {}", display_name(f));
  const bool line = shape_of(f.kind) == FeatureShape::line;
  if (!line && n != 1)
    troubles.push_back(
        {"not_one_point", thing, std::to_string(n), say("exactly 1"), say("Place it again or delete it.")});
  if (line && n < 2)
    troubles.push_back({"line_too_short", thing, std::to_string(n), say("at least 2"),
                        say("Draw the line again or delete it.")});
  if (line && n > static_cast<std::size_t>(kMostRingPoints))
    troubles.push_back({"line_too_long", thing, std::to_string(n),
                        say("at most {}", std::to_string(kMostRingPoints)),
                        say("Draw the line with fewer points.")});
}

void check_shape(std::vector<Trouble>& troubles, const Plan& plan, const Feature& f) {
  const std::string name = display_name(f);
  if (shape_of(f.kind) == FeatureShape::area) return check_ring(troubles, f.points, name);
  check_count(troubles, f);
  check_places(troubles, plan, f.points, name);
}

void check_feature(std::vector<Trouble>& troubles, const Plan& plan, const Feature& f) {
  check_shape(troubles, plan, f);
  const std::string name = display_name(f);
  const std::string zero = say("Enter the distance digging has to keep, 0 for none.");
  if (f.trench_clearance)
    check(troubles, plan,
          {{say("{} trench clearance", name), Quantity::length, *f.trench_clearance, 0, 1000, false, zero,
            "trench clearance"}});
  if (f.run_clearance)
    check(troubles, plan,
          {{say("{} run clearance", name), Quantity::length, *f.run_clearance, 0, 1000, false, zero,
            "run clearance"}});
  if (f.kind == FeatureKind::tree)
    check(troubles, plan,
          {{say("{} trunk diameter", name), Quantity::diameter, f.trunk_diameter, 0, 10, true,
            say("Measure the trunk 4.5 ft (1.4 m) above the ground."), "trunk diameter"}});
  if (f.kind == FeatureKind::utility)
    check(troubles, plan,
          {{say("{} depth", name), Quantity::length, f.depth, 0, 20, false,
            say("Enter the depth from the ground to its top."), "utility depth"}});
}

void check_ids(std::vector<Trouble>& troubles, const Site& site) {
  std::set<int> seen;
  for (const Feature& f : site.features) {
    const std::string id = std::to_string(f.id);
    if (f.id <= 0)
      troubles.push_back({"id_not_positive", say("Id of {}", display_name(f)), id, say("1 or more"),
                          say("Give it a free id.")});
    if (!seen.insert(f.id).second)
      troubles.push_back({"id_twice", say("Id of {}", display_name(f)), id, say("used once in the plan"),
                          say("Give one of the two a free id.")});
  }
}

void check_setbacks(std::vector<Trouble>& troubles, const Plan& plan) {
  const auto& lot = plan.site.lot;
  for (std::size_t i = 0; i < lot.size(); ++i)
    check(troubles, plan,
          {{say("Setback of lot edge {}", std::to_string(i + 1)), Quantity::length, lot[i].setback, 0, 1000,
            false, say("Enter the distance kept free along the edge, 0 for none."), "setback"}});
}

void check_rules(std::vector<Trouble>& troubles, const Plan& plan) {
  for (const ClearanceRule& r : plan.site.rules) {
    const std::string kind = capitalised(kind_name(r.kind));
    const std::string advice = say("Enter the distance digging has to keep, 0 for none.");
    check(troubles, plan,
          {{say("{} clearance rule for trenches", kind), Quantity::length, r.trench, 0, 1000, false, advice,
            "trench clearance rule"},
           {say("{} clearance rule for header and run", kind), Quantity::length, r.run, 0, 1000, false,
            advice, "run clearance rule"}});
  }
}

void check_heights(std::vector<Trouble>& troubles, const Plan& plan) {
  const auto& heights = plan.site.heights;
  if (heights.size() > kMostHeights)
    troubles.push_back({"too_many_heights", say("Number of spot heights"), std::to_string(heights.size()),
                        say("at most {}", std::to_string(kMostHeights)),
                        say("Leave out those that tell least.")});
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const std::size_t before = troubles.size();
    const std::string name = say("Spot height {}", std::to_string(i + 1));
    check_places(troubles, plan, {heights[i].at}, name);
    check(troubles, plan,
          {{name, Quantity::length, heights[i].height, -kHighest, kHighest, false,
            say("Measure heights from a bench mark nearer to the lot."), "spot height"}});
    if (troubles.size() > before) return;  // one tells enough
  }
}

// ---- what stops nothing ----

void check_house_in_lot(std::vector<Trouble>& troubles, const Plan& plan, const Region& lot,
                        const Feature& house) {
  const auto ring = checked_ring(house.points, "");
  if (!ring) return;  // said by check_shape
  const double outside = area(subtract(region_of(*ring), lot));
  if (outside <= 0.01) return;  // m2: a wall drawn along the lot line
  troubles.push_back({"house_outside_lot", display_name(house),
                      say("{} outside the lot line", print_quantity(Quantity::area, outside, plan.units)),
                      say("inside the lot line"), say("Move the house or the lot line.")});
}

void check_houses(std::vector<Trouble>& troubles, const Plan& plan) {
  if (plan.site.lot.empty()) return;
  const auto lot = checked_ring(lot_ring(plan.site), "");
  if (!lot) return;
  const Region inside = region_of(*lot);
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house) check_house_in_lot(troubles, plan, inside, f);
}

void check_dimensions(std::vector<Trouble>& troubles, const Plan& plan) {
  for (std::size_t i = 0; i < plan.dimensions.size(); ++i) {
    const Dimension& d = plan.dimensions[i];
    const std::string name = say("Dimension {}", std::to_string(i + 1));
    const std::size_t before = troubles.size();
    check_places(troubles, plan, {d.from, d.to}, name);
    if (troubles.size() == before)
      check(troubles, plan,
            {{say("{} offset", name), Quantity::length, d.offset, -kLargestPlan, kLargestPlan, false,
              say("Draw it nearer to what it measures."), "dimension offset"}});
  }
}

double off_wall(const Feature& house, Point p) {
  double least = kMuch;
  for (std::size_t i = 0; i < house.points.size(); ++i)
    least =
        std::min(least, distance(Segment{house.points[i], house.points[(i + 1) % house.points.size()]}, p));
  return least;
}

void check_entry(std::vector<Trouble>& troubles, const Plan& plan) {
  if (!plan.site.entry) return;
  const EntryPoint& entry = *plan.site.entry;
  const Feature* house = find_feature(plan.site, entry.house_id);
  const std::string advice = say("Set the entry point on a house wall.");
  if (house == nullptr || house->kind != FeatureKind::house) {
    troubles.push_back({"entry_house_missing", say("House of the entry point"),
                        say("id {}", std::to_string(entry.house_id)), say("the id of a house on the plan"),
                        advice});
    return;
  }
  check(troubles, plan,
        {{say("Entry point distance from the wall of {}", display_name(*house)), Quantity::length,
          off_wall(*house, entry.at), 0, kEntryReach, false, advice, "entry point distance"}});
}

void check_pipe(std::vector<Trouble>& troubles, const std::string& name, const std::string& thing) {
  auto pipe = find_pipe(name);
  if (pipe) return;
  Trouble t = pipe.error();
  t.thing = thing;
  troubles.push_back(std::move(t));
}

// ---- wishes ----

void add_coil_numbers(std::vector<Number>& numbers, const Wishes& w) {
  // The one that is computed from the other two is not used as typed, nor is the pitch of straight pipe; it
  // only has to be a number.
  const auto length = [&](const std::string& thing, double value, double high, CoilUnknown which,
                          const std::string& advice) {
    const bool used =
        follows_in(w.pattern, w.unknown) != which && !(is_straight(w.pattern) && which == CoilUnknown::pitch);
    numbers.push_back({thing, Quantity::length, value, used ? 0 : -kMuch, used ? high : kMuch, used, advice});
  };
  length(mark("Coil pitch"), w.pitch, kLargestLoop, CoilUnknown::pitch,
         say("Enter the advance of the trench for each loop."));
  length(mark("Coil length"), w.coil_length, kLongestCoil, CoilUnknown::coil_length,
         say("Enter the length of pipe in one coil."));
  length(mark("Trench length"), w.trench_length, kLongestTrench, CoilUnknown::trench_length,
         say("Enter the length of one trench."));
}

// m of ground that is left over what stands or is stacked in a trench. Not a depth that would be wise.
constexpr double kLeastCover = 0.1;

void add_pattern_numbers(std::vector<Number>& numbers, const Wishes& w) {
  const int levels = pipe_levels(w.pattern);
  const bool straight = is_straight(w.pattern), standing = w.pattern == CoilPattern::upright_coil;
  const bool stacked = levels > 1, sides = pipe_sides(w.pattern) > 1;
  const Quantity m = Quantity::length;
  numbers.push_back({mark("Loop diameter"), m, w.loop_diameter, straight ? -kMuch : 0,
                     straight ? kMuch : kLargestLoop, !straight,
                     say("Enter the diameter of the loops, centre line to centre line.")});
  // Not used by the pattern: it only has to be a number.
  numbers.push_back({mark("Level distance"), m, w.level_distance, stacked ? 0 : -kMuch,
                     stacked ? kLargestLoop : kMuch, stacked,
                     say("Enter the distance between one level of pipe and the next.")});
  numbers.push_back({mark("Side distance"), m, w.side_distance, sides ? 0 : -kMuch,
                     sides ? kLargestLoop : kMuch, sides,
                     say("Enter the distance between the pipes on either side of the trench.")});
  const double up = standing ? w.loop_diameter : stacked ? (levels - 1) * w.level_distance : 0;
  const double least = up + kLeastCover;
  const bool named = !(w.trench_depth > 0 && w.trench_depth <= 10);  // with the other numbers of the trench
  if (up > 0 && least < 10 && !named)
    numbers.push_back({mark("Trench depth"), m, w.trench_depth, least, 10, false,
                       standing ? say("Dig deeper than the loops stand high, or make smaller loops.")
                                : say("Dig deeper than the levels are high, or lay them closer.")});
}

std::vector<Number> price_numbers(const Prices& p) {
  std::vector<Number> numbers;
  const auto price = [&](const std::string& thing, double value) {
    numbers.push_back({thing, Quantity::money, value, 0, 1e9, false,
                       say("Enter what it costs; 0 where it does not count.")});
  };
  price(mark("Price of digging"), p.digging);
  price(mark("Price of a hand-dug crossing"), p.hand_crossing);
  price(mark("Price of pavement"), p.pavement);
  price(mark("Price of lawn"), p.lawn);
  price(mark("Price of bedding"), p.bedding);
  price(mark("Price of coil pipe"), p.coil_pipe);
  price(mark("Price of header pipe"), p.header_pipe);
  price(mark("Price of a joint"), p.joint);
  price(mark("Price of a crew day"), p.crew_day);
  price(mark("Worth of a circuit"), p.missing_circuit);
  price(mark("Worth of distance from a tree"), p.near_tree);
  numbers.push_back({mark("Distance from trees"), Quantity::length, p.tree_distance, 0, 1000, false,
                     say("Enter from what distance on a tree no longer counts.")});
  return numbers;
}

void add_arrangement_numbers(std::vector<Number>& numbers, const Wishes& w) {
  const bool used = w.aim == Aim::metres;
  const double least =
      used && std::isfinite(w.least_length) ? std::clamp(w.least_length, 0.0, kLongestTrench) : -kMuch;
  numbers.push_back({mark("Least trench length"), Quantity::length, w.least_length, used ? 1 : -kMuch,
                     used ? kLongestTrench : kMuch, false,
                     say("Enter how short a trench is still worth digging.")});
  numbers.push_back({mark("Most trench length"), Quantity::length, w.most_length, least,
                     used ? kLongestTrench : kMuch, false,
                     say("Enter how long a trench may be; not less than the least.")});
  if (w.direction)
    numbers.push_back({mark("Trench direction"), Quantity::angle, *w.direction, -2 * kPi, 2 * kPi, false,
                       say("Enter the direction trenches are held to, or none.")});
  numbers.push_back({mark("Groups"), Quantity::count, static_cast<double>(w.groups), 1, kMostGroups, false,
                     say("Enter into how many fields, each with its own header, the trenches are split.")});
  for (Number& n : price_numbers(w.prices)) numbers.push_back(std::move(n));
}

std::vector<Number> wishes_numbers(const Wishes& w) {
  const Quantity m = Quantity::length;
  const double least_spacing = std::isfinite(w.trench_width) ? std::clamp(w.trench_width, 0.0, 10.0) : 0;
  const double shallow = std::min(w.trench_depth, w.run_depth);
  const double most_bedding = std::isfinite(shallow) ? std::clamp(shallow, 0.0, 10.0) : 10;
  std::vector<Number> numbers;
  add_coil_numbers(numbers, w);
  add_pattern_numbers(numbers, w);
  add_arrangement_numbers(numbers, w);
  numbers.insert(
      numbers.end(),
      {
          {mark("Circuits"), Quantity::count, static_cast<double>(w.circuits), 0, 200, false,
           say("Enter how many coils are wanted.")},
          {mark("Trench width"), m, w.trench_width, 0, 10, true, say("Enter the width of the bucket.")},
          {mark("Trench depth"), m, w.trench_depth, 0, 10, true,
           say("Enter the depth from the ground to the trench floor.")},
          {mark("Trench spacing"), m, w.spacing, least_spacing, 100, false,
           say("Middle lines of neighbouring trenches cannot be closer than a trench is wide.")},
          {mark("Gap at trench ends"), m, w.end_gap, 0, 100, false,
           say("Enter the ground left between trench ends.")},
          {mark("Run width"), m, w.run_width, 0, 10, true, say("Enter the width of the bucket.")},
          {mark("Run depth"), m, w.run_depth, 0, 10, true,
           say("Enter the depth from the ground to the floor of header and run trench.")},
          {mark("Bedding"), m, w.bedding, 0, most_bedding, false,
           say("Bedding cannot be deeper than the trenches.")},
      });
  return numbers;
}

// ---- digging and crew ----

std::vector<Number> machine_numbers(const Machine& m, const std::string& key, const std::string& name,
                                    bool digs) {
  const Quantity length = Quantity::length;
  std::vector<Number> numbers = {
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

std::vector<Number> crew_numbers(const CrewWishes& c) {
  const Quantity time = Quantity::duration, count = Quantity::count;
  const auto people = [&](const std::string& thing, int n) {
    return Number{thing, count, static_cast<double>(n), 1, 20, false, say("Enter how many there are.")};
  };
  const auto rate = [&](const std::string& thing, double value, double least) {
    return Number{thing, time, value, least, 30 * 86400.0, false, say("Enter the working time it takes.")};
  };
  return {
      {mark("Start of work"), time, c.begins, 0, 86400 - 600, false, say("Enter the time of day.")},
      {mark("Hours worked a day"), time, c.day_length, 3600, 86400, false, say("1 to 24 h.")},
      {mark("Rain reserve"), Quantity::ratio, c.rain_slack, 0, 5, false, say("Enter the share of the days.")},
      people(mark("Excavators"), c.excavators),
      people(mark("Coil racks"), c.racks),
      people(mark("Laying crews"), c.laying_crews),
      people(mark("Joiners"), c.joiners),
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
  check(troubles, plan, machine_numbers(d.excavator, "excavator", say("Excavator"), true));
  check(troubles, plan, machine_numbers(plan.crew.loader, "loader", say("Loader"), false));
  check(troubles, plan, crew_numbers(plan.crew));
  check(troubles, plan,
        {{mark("Spoil distance from the edge"), Quantity::length, d.spoil_off, 0, 20, false,
          say("At least 0.61 m (2 ft) by 29 CFR 1926.651(j)(2).")}});
  if (d.slope)
    check(troubles, plan,
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

std::vector<Trouble> site_troubles(const Plan& plan) {
  std::vector<Trouble> troubles;
  if (!plan.site.lot.empty()) check_ring(troubles, lot_ring(plan.site), say("Lot line"));
  check_setbacks(troubles, plan);
  check_ids(troubles, plan.site);
  for (const Feature& f : plan.site.features) check_feature(troubles, plan, f);
  if (plan.site.entry) check_places(troubles, plan, {plan.site.entry->at}, say("Entry point"));
  check_rules(troubles, plan);
  check_heights(troubles, plan);
  check(troubles, plan,
        {{mark("North"), Quantity::angle, plan.site.north, -2 * kPi, 2 * kPi, false,
          say("Turn the north arrow.")},
         {mark("Root zone factor"), Quantity::count, plan.site.root_zone_factor, 0, 100, false,
          say("Enter the radius of the root zone in trunk diameters; 12 to 18 is usual.")}});
  return troubles;
}

std::vector<Trouble> wishes_troubles(const Plan& plan) {
  std::vector<Trouble> troubles;
  const Wishes& w = plan.wishes;
  check(troubles, plan, wishes_numbers(w));
  for (const GivenTrench& t : w.locked) {
    std::vector<Point> places = {t.head, t.end};
    places.insert(places.end(), t.bends.begin(), t.bends.end());
    check_places(troubles, plan, places, say("Locked trench"));
  }
  if (w.header_on) check_places(troubles, plan, {w.header_on->a, w.header_on->b}, say("Header line"));
  for (const GroupHeader& h : w.group_headers) {
    check_places(troubles, plan, {h.on.a, h.on.b}, say("Header line"));
    check(
        troubles, plan,
        {{mark("Group of a header line"), Quantity::count, static_cast<double>(h.group), 2, kMostGroups,
          false, say("The first group has a line of its own; ask for as many groups as there are lines.")}});
  }
  check_places(troubles, plan, w.run_by, say("Place on the supply run"));
  for (const Segment& s : w.kept) check_places(troubles, plan, {s.a, s.b}, say("Kept trench"));
  return troubles;
}

std::vector<Trouble> ground_troubles(const Plan& plan) {
  const Ground& g = plan.ground;
  std::vector<Trouble> troubles;
  check(troubles, plan,
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

std::vector<Trouble> heat_troubles(const Plan& plan) {
  return thermal_troubles(plan.thermal, plan.units);
}

std::vector<Trouble> fluid_troubles(const Plan& plan) {
  return flow_troubles(plan.flow, plan.units);
}

void check_picture(std::vector<Trouble>& troubles, const Plan& plan, const Picture& p) {
  const std::string name = p.name.empty() ? say("Picture") : say("Picture {}", p.name);
  check_places(troubles, plan, {p.at}, name);
  const std::string scale = say("Scale it by two points and the distance between them.");
  check(troubles, plan,
        {{say("{} width", name), Quantity::length, p.width, 0, kLargestPlan, true, scale, "picture width"},
         {say("{} height", name), Quantity::length, p.height, 0, kLargestPlan, true, scale, "picture height"},
         {say("{} turn", name), Quantity::angle, p.turn, -2 * kPi, 2 * kPi, false, say("Turn it again."),
          "picture turn"},
         {say("{} strength", name), Quantity::ratio, p.strength, 0, 1, false,
          say("Enter how strongly it shows."), "picture strength"},
         {say("{} page", name), Quantity::count, static_cast<double>(p.page), 1, 9999, false,
          say("Enter which page of the PDF is shown."), "picture page"}});
}

void check_map_place(std::vector<Trouble>& troubles, const Plan& plan, const MapPlace& place) {
  check_places(troubles, plan, {place.at}, say("Map place"));
  const std::string advice = say("Take the place on the map out, or import the drawing again.");
  constexpr double kDegree = kPi / 180;
  check(troubles, plan,
        {{mark("Latitude"), Quantity::angle, place.latitude * kDegree, -kPi / 2, kPi / 2, false, advice},
         {mark("Longitude"), Quantity::angle, place.longitude * kDegree, -kPi, kPi, false, advice}});
}

std::vector<Trouble> loose_troubles(const Plan& plan) {
  std::vector<Trouble> troubles;
  check_houses(troubles, plan);
  check_entry(troubles, plan);
  check_pipe(troubles, plan.wishes.pipe, say("Coil pipe"));
  check_pipe(troubles, plan.wishes.header_pipe, say("Header pipe"));
  check_dimensions(troubles, plan);
  for (Trouble& t : loop_test_troubles(plan.test, plan.units)) troubles.push_back(std::move(t));
  for (Trouble& t : survey_troubles(plan.survey, plan.units)) troubles.push_back(std::move(t));
  for (const Picture& p : plan.pictures) check_picture(troubles, plan, p);
  if (plan.map_place) check_map_place(troubles, plan, *plan.map_place);
  for (Trouble& t : record_troubles(plan.record, plan.units)) troubles.push_back(std::move(t));
  for (Trouble& t : as_built_troubles(plan.as_built, plan.units)) troubles.push_back(std::move(t));
  return troubles;
}

std::vector<Trouble> plan_troubles(const Plan& plan) {
  std::vector<Trouble> all = site_troubles(plan);
  for (auto part : {wishes_troubles(plan), ground_troubles(plan), heat_troubles(plan), fluid_troubles(plan),
                    pricing_troubles(plan.pricing, plan.units), loose_troubles(plan)})
    all.insert(all.end(), part.begin(), part.end());
  return all;
}

}  // namespace underlawn
