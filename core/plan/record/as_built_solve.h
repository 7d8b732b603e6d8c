// SPDX-License-Identifier: GPL-3.0-or-later
// The loop as it was dug, solved again: whether it still holds what the plan holds.
#pragma once

#include <memory>
#include <stop_token>
#include <string>
#include <vector>

#include "plan/laid_solver.h"
#include "plan/outcome.h"
#include "plan/plan.h"
#include "plan/record/built_layout.h"

namespace underlawn {

// One thing that the loop has to hold.
struct Hold {
  std::string key;   // "coldest"
  std::string what;  // "Coldest water to the heat pump"
  Quantity quantity = Quantity::temperature;
  double planned = 0, built = 0, limit = 0;  // SI
  bool at_least = true;                      // the limit is a least; else a most
  bool held = true, holds = true;            // as planned; as built
  bool operator==(const Hold&) const = default;
};

// Coldest and warmest water to the heat pump, freezing point, balance, circulator's flow at the coldest,
// flushing; those that were solved in both. `built` is solved for `plan`, whose limits hold. Where the record
// has a freezing point that was read at the fill, that is the built one.
std::vector<Hold> holds_of(const Plan& plan, const Outcome& planned, const Outcome& built);
bool all_hold(const std::vector<Hold>& holds);
// Whether anything was measured that a loop as built differs by: the as-built, or the fill of the record.
bool anything_built(const Plan& plan);
// Whether digging lost something: what held by plan holds no more, or what did not is worse by more than a
// hundredth.
bool worse_than_planned(const std::vector<Hold>& holds);

// A figure of both, side by side.
struct Change {
  std::string key, label;
  Quantity quantity = Quantity::length;
  double planned = 0, built = 0;  // SI
  bool operator==(const Change&) const = default;
};

struct AsBuiltAnswer {
  Plan plan;  // as built: trenches given where they lie, pipe sizes as laid, utilities as deep as measured
  BuiltLoop loop;
  std::shared_ptr<const Outcome> outcome;
  std::vector<Hold> holds;
  std::vector<Change> changes;
  std::vector<Finding> findings;  // that digging made or made worse (built_findings.h)
};

// `planned` is plan's own outcome. Pipe lies and things are crossed at the depth of each leg; earth and
// checks take one depth for header and run, the mean by length.
AsBuiltAnswer solve_as_built(const Plan& plan, const Outcome& planned, LaidSolver& solver,
                             std::stop_token stop = {});
AsBuiltAnswer solve_as_built(const Plan& plan, const Outcome& planned, std::stop_token stop = {});

// The plan that the as-built is solved by.
Plan built_plan(const Plan& plan, const Outcome& planned, const BuiltLoop& loop);
std::vector<GivenTrench> given_from(const Layout& layout);

}  // namespace underlawn
