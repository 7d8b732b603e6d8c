// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/amounts.h"

#include "base/say.h"
#include "cost/take_off.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

// Fittings of the loop as it is drawn, without spare.
struct Fittings {
  int tees = 0, reducers = 0, elbows = 0, unions = 0;
  int joints() const { return 3 * tees + reducers + 2 * elbows + unions; }
};

Fittings fittings_of(const FittingCount& count) {
  Fittings all;
  for (const auto& [key, n] : count.fittings)
    (key.starts_with("tee")       ? all.tees
     : key.starts_with("reducer") ? all.reducers
     : key.starts_with("elbow")   ? all.elbows
                                  : all.unions) += n;
  return all;
}

// By the fittings where three pipes meet at every tee and no reducer stands alone, which is so but for home
// runs.
How joints_by_fittings(Figures& all, const Fittings& fittings, int couplings) {
  const std::vector<std::string> placed = {"layout.circuits_placed"};
  const auto counted = [&](const char* key, const std::string& label, int n) {
    derived(all, key, label, n, Quantity::count, {say("counted from the loop as it is drawn"), placed, ""});
  };
  counted("layout.tees", say("Tees"), fittings.tees);
  counted("layout.reducers", say("Reducers"), fittings.reducers);
  counted("layout.elbows", say("Elbows"), fittings.elbows);
  counted("layout.unions", say("Unions at the heat pump"), fittings.unions);
  counted("layout.couplings", say("Couplings in pipe longer than what is sold"), couplings);
  return {say("3 x tees + reducers + 2 x elbows + unions + 2 x couplings"),
          {"layout.tees", "layout.reducers", "layout.elbows", "layout.unions", "layout.couplings"},
          ""};
}

void add_joints(Figures& all, const Plan& plan, const Outcome& outcome, const Amounts& a) {
  const int joints = outcome.work ? outcome.work->joints : a.joints;
  How how{say("8 x circuits: the loop could not be sized"), {"layout.circuits_placed"}, ""};
  if (outcome.flow != nullptr) {
    const FittingCount count = count_fittings(outcome.flow->loop, outcome.layout, plan.flow.arrangement);
    const Fittings fittings = fittings_of(count);
    how.method =
        say("where p pipes meet by f fittings p + f - 1, at an elbow on the way 2, at a coupling 2; "
            "from the unions at the heat pump on, both pipes");
    if (fittings.joints() == count.joints && joints >= count.joints)
      how = joints_by_fittings(all, fittings, (joints - count.joints) / 2);
  }
  derived(all, "layout.joints", say("Fused joints"), joints, Quantity::count, std::move(how));
}

}  // namespace

void add_amounts(Figures& all, const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return;
  const Amounts a = amounts_of(plan.site, plan.wishes, outcome.layout, terrain_of(outcome));
  const std::vector<std::string> placed = {"layout.circuits_placed", "dig.trench_width", "dig.trench_depth"};
  derived(all, "layout.lawn", say("Lawn torn up"), outcome.work ? outcome.work->torn.lawn : a.lawn,
          Quantity::area,
          {say("all that is dug, heaped on, driven over or kept for pipe: trenches with a metre to work in, "
               "heaps "
               "as they lie, ways of machine and trucks, less drives, house and beds"),
           placed,
           say("distance of spoil: 29 CFR 1926.651(j)(2); swell, heap and working room: common practice, no "
               "source")});
  add_joints(all, plan, outcome, a);
  if (a.trees.empty()) return;
  derived(all, "layout.nearest_tree", say("Nearest trunk to a trench, header or run"),
          a.trees.front().nearest, Quantity::length,
          {say("from the trunk's centre to the edge of the floor"), placed, ""});
}

}  // namespace underlawn::figures
