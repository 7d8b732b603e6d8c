// SPDX-License-Identifier: GPL-3.0-or-later
// The groups of figures and the small words they are written in.
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn::figures {

inline constexpr const char* kTyped = "typed";  // a key: whoever shows it says it

// What was entered or drawn.
void typed(Figures& all, std::string key, std::string label, double value, Quantity quantity);

// What follows. Every key of `from` must be there already (asserts).
struct How {
  std::string method;
  std::vector<std::string> from;
  std::string source;
};
void derived(Figures& all, std::string key, std::string label, double value, Quantity quantity, How how);

// Each group may name figures of the groups before it.
void add_site(Figures& all, const Plan& plan, const Outcome& outcome);
void add_survey(Figures& all, const Plan& plan);  // where there is a deed
void add_wishes(Figures& all, const Plan& plan);
void add_pipe(Figures& all, const Plan& plan, const Outcome& outcome);
void add_coil(Figures& all, const Plan& plan, const Outcome& outcome);
void add_layout(Figures& all, const Plan& plan, const Outcome& outcome);
void add_amounts(Figures& all, const Plan& plan, const Outcome& outcome);
void add_trenches(Figures& all, const Outcome& outcome);
void add_header_run(Figures& all, const Outcome& outcome);
void add_crossings(Figures& all, const Plan& plan, const Outcome& outcome);
void add_pipe_to_buy(Figures& all, const Plan& plan, const Outcome& outcome);
void add_floors(Figures& all, const Plan& plan, const Outcome& outcome);  // where the ground is known
void add_earth(Figures& all, const Plan& plan, const Outcome& outcome);
void add_stake_out(Figures& all, const Outcome& outcome);
void add_flow(Figures& all, const Plan& plan, const Outcome& outcome);    // needs Outcome::flow
void add_record(Figures& all, const Plan& plan, const Outcome& outcome);  // needs Outcome::flow
void add_heat(Figures& all, const Plan& plan, const Outcome& outcome);    // needs Outcome::surroundings
void add_cost(Figures& all, const Plan& plan, const Outcome& outcome);
void add_dig_order(Figures& all, const Plan& plan, const Outcome& outcome);
void add_temperatures(Figures& all, const Outcome& outcome);  // needs Outcome::temperatures

std::string trench_key(int number);  // "trench.3"

}  // namespace underlawn::figures
