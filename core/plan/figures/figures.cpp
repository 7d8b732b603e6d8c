// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/figures/figures.h"

#include <cassert>

#include "plan/figures/price_groups.h"
#include "plan/plan_troubles.h"

namespace underlawn {

namespace figures {

void typed(Figures& all, std::string key, std::string label, double value, Quantity quantity) {
  all.add({std::move(key), std::move(label), value, quantity, kTyped, "", {}});
}

void derived(Figures& all, std::string key, std::string label, double value, Quantity quantity, How how) {
  for ([[maybe_unused]] const std::string& from : how.from) assert(all.find(from) != nullptr);
  all.add({std::move(key), std::move(label), value, quantity, std::move(how.method), std::move(how.source),
           std::move(how.from)});
}

std::string trench_key(int number) {
  return "trench." + std::to_string(number);
}

}  // namespace figures

Figures make_figures(const Plan& plan, const Outcome& outcome) {
  using namespace figures;
  Figures all;
  add_survey(all, plan);
  add_wishes(all, plan);
  add_pipe(all, plan, outcome);
  if (outcome.coil.laid()) add_coil(all, plan, outcome);
  if (outcome.surroundings != nullptr) add_heat(all, plan, outcome);
  if (plan.site.lot.empty() || !site_troubles(plan).empty()) return all;
  add_site(all, plan, outcome);
  if (!outcome.coil.laid() || !wishes_troubles(plan).empty()) return all;
  add_layout(all, plan, outcome);
  add_amounts(all, plan, outcome);
  add_trenches(all, outcome);
  add_header_run(all, outcome);
  add_crossings(all, plan, outcome);
  add_pipe_to_buy(all, plan, outcome);
  if (ground_troubles(plan).empty()) add_earth(all, plan, outcome);
  add_stake_out(all, outcome);
  if (outcome.flow != nullptr) add_flow(all, plan, outcome);
  if (outcome.flow != nullptr) add_record(all, plan, outcome);
  if (ground_troubles(plan).empty()) add_cost(all, plan, outcome);
  if (outcome.bill != nullptr && ground_troubles(plan).empty()) add_bill(all, plan, outcome);
  if (ground_troubles(plan).empty()) add_dig_order(all, plan, outcome);
  if (outcome.temperatures != nullptr) add_temperatures(all, outcome);
  if (outcome.comparison != nullptr) add_running(all, plan, outcome);
  return all;
}

}  // namespace underlawn
