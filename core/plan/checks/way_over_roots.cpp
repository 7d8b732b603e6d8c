// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"
#include "plan/roots_driven.h"

namespace underlawn::checks {

namespace {

std::string title_of(const RootsDriven& r, const std::string& tree) {
  if (r.machine && r.trucks) return say("Machine and trucks drive over the roots of {}", tree);
  return r.machine ? say("The machine drives over the roots of {}", tree)
                   : say("Trucks drive over the roots of {}", tree);
}

}  // namespace

// One finding a tree, with the area that is driven on; as spoil_lies_on is for heaps.
std::vector<Finding> way_over_roots(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const RootsDriven& r : roots_driven(plan, outcome)) {
    const Feature* tree = find_feature(plan.site, r.tree);
    Finding f = make_finding("way_over_roots", feature_part(*tree), Severity::warning,
                             title_of(r, display_name(*tree)));
    set_measure(f, r.area, 0, Quantity::area);
    f.advice =
        say("As near as {} to its trunk. Let them in on another side; where they must drive there, mats or "
            "planks "
            "over the roots first, on dry ground, without turning.",
            print_quantity(Quantity::length, r.nearest, plan.units));
    f.source = say("weight and cover harm roots: common practice, no source; an arborist's word goes first");
    f.places = {tree->points};
    findings.push_back(std::move(f));
  }
  return findings;
}

}  // namespace underlawn::checks
