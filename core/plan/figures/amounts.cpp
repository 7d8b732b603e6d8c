// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/amounts.h"

#include "base/say.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

void add_amounts(Figures& all, const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return;
  const Amounts a = amounts_of(plan.site, plan.wishes, outcome.layout, terrain_of(outcome));
  const std::vector<std::string> placed = {"layout.circuits_placed", "dig.trench_width", "dig.trench_depth"};
  derived(all, "layout.lawn", say("Lawn torn up"), a.lawn, Quantity::area,
          {say("trenches with the spoil beside them (swell 1.25, heaped 1.5 to 1, 2 ft from the edge) and a "
               "metre to "
               "work in, less drives and house"),
           placed,
           say("distance of spoil: 29 CFR 1926.651(j)(2); swell, heap and working room: common practice, no "
               "source")});
  derived(all, "layout.joints", say("Fused joints"), a.joints, Quantity::count,
          {say("6 (circuits - 1) + 4 x ends of the header + 2: tees of three, reducers of two, the house"),
           {"layout.circuits_placed"},
           say("common practice, no source")});
  if (a.trees.empty()) return;
  derived(all, "layout.nearest_tree", say("Nearest trunk to a trench, header or run"),
          a.trees.front().nearest, Quantity::length,
          {say("from the trunk's centre to the edge of the floor"), placed, ""});
}

}  // namespace underlawn::figures
