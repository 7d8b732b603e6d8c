// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig_order.h"
#include "plan/stages/stages.h"

namespace underlawn {

void Stages::solve_dig(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  const bool can_dig = !troubles.out.ground && !troubles.out.wishes;
  DigIn in{layout.serial, for_dig(plan.wishes), plan.ground, terrain.serial, for_dig(plan.dig), can_dig};
  outcome.dig = dig.run(std::move(in), runs.dig, stop, [&](const DigIn& i) {
    return i.can_dig ? make_dig(outcome.layout, i.wishes, i.ground, *outcome.terrain, i.how) : DigPlan{};
  });
  solve_order(plan, outcome, stop);
  StakeOutIn where{for_taping(without_notes(plan.site)), layout.serial, !troubles.out.site};
  outcome.stake_out = stake_out.run(std::move(where), runs.stake_out, stop, [&](const StakeOutIn& i) {
    return i.site_sound ? make_stake_out(i.site, outcome.layout) : StakeOut{};
  });
}

void Stages::solve_order(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  OrderIn asked{without_notes(plan.site),
                layout.serial,
                dig.serial,
                for_dig(plan.wishes),
                plan.ground,
                plan.dig,
                !troubles.out.ground && !troubles.out.wishes && !troubles.out.site};
  outcome.order = order.run(std::move(asked), runs.order, stop, [&](const OrderIn& i) {
    if (!i.sound || outcome.layout.trenches.empty()) return std::shared_ptr<const DigOrder>();
    return std::shared_ptr<const DigOrder>(std::make_shared<DigOrder>(
        make_dig_order(i.site, outcome.layout, outcome.dig, i.wishes, i.ground, i.how)));
  });
}

}  // namespace underlawn
