// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "dig/dig.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

constexpr double kEngineerBeyond = 6.096;  // m: 20 ft, 29 CFR 1926.652(b)

std::string deep(const Plan& plan, double depth) {
  return print_quantity(Quantity::length, depth, plan.units);
}

std::string title(bool coils, bool engineer, Sides sides, const std::string& depth) {
  if (!engineer && sides == Sides::stay_out)
    return coils ? say("Coil trenches are {} deep, sides vertical: nobody goes in, at any time", depth)
                 : say("Header and run are {} deep, sides vertical: nobody goes in, at any time", depth);
  if (coils && engineer)
    return say("Coil trenches are {} deep: an engineer must design the protection", depth);
  if (coils) return say("Coil trenches are {} deep: nobody enters without protection", depth);
  if (engineer) return say("Header and run are {} deep: an engineer must design the protection", depth);
  return say("Header and run are {} deep: nobody enters without protection", depth);
}

// What is done, by the sides as planned; whoever still has to go in stops first.
std::string advice(const Plan& plan, Sides sides) {
  const std::string from = deep(plan, kProtectFrom);
  const std::string ladder = plan.units == UnitSystem::us ? "25 ft" : "7.6 m";
  switch (sides) {
    case Sides::stay_out:
      return say(
          "Pipe is let down and everything else done from the edge. Must anybody go in after all: stop; from "
          "{} of depth on a protective system comes first, set by the competent person. He looks daily.",
          from);
    case Sides::slope:
      return say(
          "From {} on nobody goes in before the sides are laid back as planned; a ladder within {} of "
          "everyone; a competent person inspects daily. Below the limit inspection is due as well.",
          from, ladder);
    case Sides::shield:
      return say(
          "From {} on people go in only inside the shield; a ladder within {} of everyone; a competent "
          "person inspects daily. Below the limit inspection is due as well.",
          from, ladder);
    case Sides::shoring:
      break;
  }
  return say(
      "From {} on people go in only between the shores; a ladder within {} of everyone; a competent person "
      "inspects daily. Below the limit inspection is due as well.",
      from, ladder);
}

void check_depth(std::vector<Finding>& findings, const Plan& plan, double depth, const std::string& part,
                 bool coils, std::vector<Polyline> places) {
  if (places.empty()) return;
  const Sides sides = coils ? plan.dig.coil_sides : plan.dig.run_sides;
  const bool engineer = depth > kEngineerBeyond + kCheckTolerance;
  const bool protect = depth >= kProtectFrom - kCheckTolerance && plan.ground.soil != SoilType::stable_rock;
  if (!engineer && !protect) return;
  Finding f = make_finding("trench_depth_protection", part, engineer ? Severity::error : Severity::warning,
                           title(coils, engineer, sides, deep(plan, depth)));
  // Five feet is where a duty begins, not a depth that is asked for: nothing to compare.
  set_measure(f, depth, engineer ? kEngineerBeyond : depth);
  f.advice = engineer
                 ? say("Dig less deep, or have a registered professional engineer design sloping or shoring.")
                 : advice(plan, sides);
  f.source = engineer ? say("29 CFR 1926.652(b), Table B-1") : "29 CFR 1926.652(a)(1)";
  f.places = std::move(places);
  findings.push_back(std::move(f));
}

}  // namespace

std::vector<Finding> trench_depth_protection(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  double deepest = 0;
  for (const Trench& t : outcome.layout.trenches) deepest = std::max(deepest, t.depth);
  for (const FloorLevel& f : outcome.dig.floors) deepest = std::max(deepest, f.deepest);
  check_depth(findings, plan, deepest, "trenches", true, trench_places(outcome.layout));
  check_depth(findings, plan, plan.wishes.run_depth, "run", false, conduit_places(outcome.layout));
  return findings;
}

}  // namespace underlawn::checks
