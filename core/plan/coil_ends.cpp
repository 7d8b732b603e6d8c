// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/coil_ends.h"

#include <algorithm>

namespace underlawn {

double deepest_head(const Layout& layout, const DigPlan& dig) {
  double deepest = 0;
  for (std::size_t i = 0; i < layout.trenches.size(); ++i)
    deepest = std::max(deepest, i < dig.floors.size() ? dig.floors[i].ground_head - dig.floors[i].floor_head
                                                      : layout.trenches[i].depth);
  return deepest;
}

CoilEnd coil_end(const Plan& plan, const Layout& layout, const DigPlan& dig) {
  const double deep = deepest_head(layout, dig);
  CoilEnd end{plan.flow.tail};
  end.over_edge = plan.dig.coil_sides == Sides::stay_out && plan.dig.run_sides == Sides::stay_out;
  end.rise = end.over_edge ? deep + kOverEdge : std::max(0.0, deep - plan.wishes.run_depth - plan.flow.tail);
  return end;
}

FlowWishes flow_as_cut(const Plan& plan, const Layout& layout, const DigPlan& dig) {
  FlowWishes flow = plan.flow;
  flow.tail = coil_end(plan, layout, dig).length();
  return flow;
}

double coil_cut(const Plan& plan, const Outcome& outcome, int trench) {
  double length = 0;
  if (outcome.flow != nullptr) {
    const LoopNetwork& loop = outcome.flow->loop;
    for (std::size_t i = 0; i < loop.pipes.size(); ++i)
      if (loop.pipes[i].part == LoopPart::circuit && loop.pipes[i].trench == trench)
        length += loop.network.pipes[i].length;
    if (length > 0) return length;
  }
  for (const Trench& t : outcome.layout.trenches)
    if (t.number == trench)
      length = t.coil.coil_length + 2 * coil_end(plan, outcome.layout, outcome.dig).length();
  return length;
}

}  // namespace underlawn
