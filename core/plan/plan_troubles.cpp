// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/plan_troubles.h"

#include "cost/pricing_troubles.h"
#include "thermal/surroundings.h"

namespace underlawn {

std::vector<Trouble> heat_troubles(const Plan& plan) {
  return thermal_troubles(plan.thermal, plan.units);
}

std::vector<Trouble> fluid_troubles(const Plan& plan) {
  return flow_troubles(plan.flow, plan.units);
}

std::vector<Trouble> plan_troubles(const Plan& plan) {
  std::vector<Trouble> all = site_troubles(plan);
  for (auto part : {wishes_troubles(plan), ground_troubles(plan), heat_troubles(plan), fluid_troubles(plan),
                    pricing_troubles(plan.pricing, plan.units), loose_troubles(plan)})
    all.insert(all.end(), part.begin(), part.end());
  return all;
}

}  // namespace underlawn
