// SPDX-License-Identifier: GPL-3.0-or-later
// The hydraulic stage: from the laid loop and what is asked of its fluid to flows, heads and pump power.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "flow/antifreeze.h"
#include "flow/header_design.h"
#include "flow/loop_network.h"
#include "flow/pump_duty.h"

namespace underlawn {

// The loop at one temperature and the design flow.
struct FlowState {
  double temperature = 0;  // deg C
  FluidProperties fluid;
  NetworkFlow flow;                // pipes as in the loop
  double imbalance = 0;            // of the circuits
  std::vector<double> resistance;  // m K/W of each pipe, outside of the wall to fluid; 0 for the heat pump
};

// The pump at one temperature.
struct PumpState {
  DutyPoint duty;                  // at full speed
  double w_per_kw = 0;             // W of pump per kW of heat pump capacity
  std::string grade;               // pump_grade
  std::vector<SpeedPoint> slower;  // for 100, 75 and 50 % of the design flow, where the pump can
};

// What would bring the circuits nearer to one another.
struct Remedy {
  std::string what;      // "reverse return"
  double imbalance = 0;  // with it
};

struct Flow {
  LoopNetwork loop;
  HeaderSizes sizes;
  std::optional<HeaderChoice> header;  // where a size was left open: what was designed
  FlowState design, coldest;
  std::optional<PumpState> pump, coldest_pump;  // none without a circulator
  std::vector<Remedy> remedies;  // best first; filled where the imbalance at design is above the limit
  double volume = 0;             // m3, without the heat pump
  Antifreeze antifreeze;
  std::vector<Trouble> pump_refusals;  // why there is no duty point; flow_remarks tells them with the rest
};

// Sizes left open are designed by design_header. Refuses what flow_troubles, header_tree and loop_network
// refuse.
Result<Flow> solve_flow(const Layout& layout, const Wishes& wishes, const FlowWishes& flow);

// The same with these sizes.
Result<Flow> solve_flow(const Layout& layout, const Wishes& wishes, const FlowWishes& flow,
                        const HeaderSizes& sizes);

// One temperature (deg C) alone.
Result<FlowState> flow_state(const LoopNetwork& loop, const FlowWishes& wishes, double temperature);

}  // namespace underlawn
