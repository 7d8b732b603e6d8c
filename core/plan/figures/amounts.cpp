// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/amounts.h"

#include "base/say.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

void add_amounts(Figures& all, const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return;
  const Amounts a = amounts_of(plan.site, plan.wishes, outcome.layout, terrain_of(outcome));
  const std::vector<std::string> placed = {"layout.circuits_placed", "dig.trench_width", "dig.trench_depth"};
  derived(all, "layout.lawn", say("Lawn torn up"), outcome.work ? outcome.work->torn.lawn : a.lawn,
          Quantity::area,
          {say("trenches with the spoil beside them (swell 1.25, heaped 1.5 to 1, 2 ft from the edge) and a "
               "metre to "
               "work in, less drives and house"),
           placed,
           say("distance of spoil: 29 CFR 1926.651(j)(2); swell, heap and working room: common practice, no "
               "source")});
  derived(all, "layout.joints", say("Fused joints"), outcome.work ? outcome.work->joints : a.joints,
          Quantity::count,
          {outcome.flow != nullptr
               ? say("where p pipes meet by f fittings p + f - 1, at an elbow on the way 2, at a coupling 2; "
                     "from the unions at the heat pump on, both pipes")
               : say("8 x circuits: the loop could not be sized"),
           {"layout.circuits_placed"},
           ""});
  if (a.trees.empty()) return;
  derived(all, "layout.nearest_tree", say("Nearest trunk to a trench, header or run"),
          a.trees.front().nearest, Quantity::length,
          {say("from the trunk's centre to the edge of the floor"), placed, ""});
}

}  // namespace underlawn::figures
