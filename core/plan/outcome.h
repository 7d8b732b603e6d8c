// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that follows from a plan.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "base/figure.h"
#include "base/result.h"
#include "cost/job_work.h"
#include "dig/dig.h"
#include "field/coil.h"
#include "flow/hydraulics.h"
#include "flow/purge.h"
#include "layout/layout.h"
#include "plan/finding.h"
#include "plan/stake_out.h"
#include "thermal/temperatures.h"

namespace underlawn {

class Terrain;

struct Bill;        // cost/bill.h
struct Comparison;  // cost/comparison.h

struct DigOrder;
struct CrewCalendar;

struct Outcome {
  Coil coil;  // each trench's; zero when the wishes cannot be met
  Layout layout;
  std::shared_ptr<const Terrain> terrain;  // without spot heights it knows nothing
  DigPlan dig;
  std::shared_ptr<const DigOrder> order;         // dig/dig_order.h; null where nothing is laid or dug
  std::shared_ptr<const CrewCalendar> calendar;  // cost/crew_calendar.h; null likewise
  std::optional<JobWork> work;                   // none where nothing is laid or dug
  StakeOut stake_out;
  std::shared_ptr<const Flow> flow;     // null where unsolved; antifreeze for the coldest typed or simulated
  std::shared_ptr<const Purge> purge;   // null too where flushing cannot be solved
  std::optional<Trouble> flow_refusal;  // why, where something is laid
  std::shared_ptr<const Surroundings> surroundings;  // null where what is asked of heat is unsound
  std::shared_ptr<const Temperatures> temperatures;  // null too where nothing is laid
  std::shared_ptr<const Bill> bill;                  // null where nothing is laid, or prices are unsound
  std::shared_ptr<const Comparison> comparison;      // null where the temperatures are, or no bill is
  std::vector<Finding> findings;                     // errors first, then by key
  Figures figures;
  // What stops a stage: the plan's own troubles, the coil's refusal, the layout's troubles, in that order,
  // each once.
  std::vector<Trouble> troubles;
  std::string fingerprint;  // 12 hex digits of the plan's content; printed on every sheet
};

const Terrain& terrain_of(const Outcome& outcome);  // one that knows nothing where it was not solved

bool has_unaccepted_errors(const Outcome& outcome);

}  // namespace underlawn
