// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/say.h"
#include "field/straight.h"
#include "plan/bounded_number.h"
#include "plan/plan_troubles.h"

namespace underlawn {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kMuch = std::numeric_limits<double>::infinity();

void add_coil_numbers(std::vector<BoundedNumber>& numbers, const Wishes& w) {
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

void add_pattern_numbers(std::vector<BoundedNumber>& numbers, const Wishes& w) {
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

std::vector<BoundedNumber> price_numbers(const Prices& p) {
  std::vector<BoundedNumber> numbers;
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

void add_arrangement_numbers(std::vector<BoundedNumber>& numbers, const Wishes& w) {
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
  for (BoundedNumber& n : price_numbers(w.prices)) numbers.push_back(std::move(n));
}

std::vector<BoundedNumber> wishes_numbers(const Wishes& w) {
  const Quantity m = Quantity::length;
  const double least_spacing = std::isfinite(w.trench_width) ? std::clamp(w.trench_width, 0.0, 10.0) : 0;
  const double shallow = std::min(w.trench_depth, w.run_depth);
  const double most_bedding = std::isfinite(shallow) ? std::clamp(shallow, 0.0, 10.0) : 10;
  std::vector<BoundedNumber> numbers;
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

}  // namespace

std::vector<Trouble> wishes_troubles(const Plan& plan) {
  std::vector<Trouble> troubles;
  const Wishes& w = plan.wishes;
  check_numbers(troubles, plan, wishes_numbers(w));
  for (const GivenTrench& t : w.locked) {
    std::vector<Point> places = {t.head, t.end};
    places.insert(places.end(), t.bends.begin(), t.bends.end());
    check_places(troubles, plan, places, say("Locked trench"));
  }
  if (w.header_on) check_places(troubles, plan, {w.header_on->a, w.header_on->b}, say("Header line"));
  for (const GroupHeader& h : w.group_headers) {
    check_places(troubles, plan, {h.on.a, h.on.b}, say("Header line"));
    check_numbers(
        troubles, plan,
        {{mark("Group of a header line"), Quantity::count, static_cast<double>(h.group), 2, kMostGroups,
          false, say("The first group has a line of its own; ask for as many groups as there are lines.")}});
  }
  check_places(troubles, plan, w.run_by, say("Place on the supply run"));
  for (const Segment& s : w.kept) check_places(troubles, plan, {s.a, s.b}, say("Kept trench"));
  check_places(troubles, plan, w.kept_run, say("Kept supply run"));
  return troubles;
}

}  // namespace underlawn
