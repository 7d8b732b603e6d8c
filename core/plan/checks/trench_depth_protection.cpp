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

std::string title(bool coils, bool engineer, const std::string& depth) {
  if (coils && engineer)
    return say("Coil trenches are {} deep: an engineer must design the protection", depth);
  if (coils) return say("Coil trenches are {} deep: nobody enters without protection", depth);
  if (engineer) return say("Header and run are {} deep: an engineer must design the protection", depth);
  return say("Header and run are {} deep: nobody enters without protection", depth);
}

void check_depth(std::vector<Finding>& findings, const Plan& plan, double depth, const std::string& part,
                 bool coils, std::vector<Polyline> places) {
  if (places.empty()) return;
  const bool engineer = depth > kEngineerBeyond + kCheckTolerance;
  const bool protect = depth >= kProtectFrom - kCheckTolerance && plan.ground.soil != SoilType::stable_rock;
  if (!engineer && !protect) return;
  Finding f = make_finding("trench_depth_protection", part, engineer ? Severity::error : Severity::warning,
                           title(coils, engineer, deep(plan, depth)));
  // Five feet is where a duty begins, not a depth that is asked for: nothing to compare.
  set_measure(f, depth, engineer ? kEngineerBeyond : depth);
  f.advice = engineer
                 ? say("Dig less deep, or have a registered professional engineer design sloping or shoring.")
                 : say("From 5 ft (1.52 m) on: slope, shore or shield the sides before anybody goes in; "
                       "give a ladder within 25 "
                       "ft; a competent person "
                       "inspects daily. Below the limit inspection is due as well.");
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
