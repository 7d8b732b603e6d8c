// SPDX-License-Identifier: GPL-3.0-or-later
// The stages of solve(), each with what it last read and made.
#pragma once

#include "plan/solve.h"
#include "plan/stages/inputs.h"
#include "plan/stages/stage.h"
#include "thermal/temperatures.h"

namespace underlawn {

struct Stages {
  Stage<Plan, Troubles> troubles;
  Stage<CoilIn, CoilMade> coil;
  Stage<LayoutIn, Layout> layout;
  Stage<std::vector<SpotHeight>, std::shared_ptr<const Terrain>> terrain;
  Stage<DigIn, DigPlan> dig;
  Stage<OrderIn, std::shared_ptr<const DigOrder>> order;
  Stage<CalendarIn, std::shared_ptr<const CrewCalendar>> calendar;
  Stage<WorkIn, std::optional<JobWork>> work;
  Stage<StakeOutIn, StakeOut> stake_out;
  Stage<FlowIn, FlowMade> flow;
  Stage<ThermalWishes, std::shared_ptr<const Surroundings>> surroundings;
  Stage<TemperaturesIn, std::shared_ptr<const Temperatures>> temperatures;
  KernelShelf shelf;
  Stage<LastIn, std::vector<Finding>> checks;
  Stage<LastIn, Figures> figures;
  StageRuns runs;

  void solve_ground(const Plan& plan, const Layout* laid, Outcome& outcome, const std::stop_token& stop);
  void take_laid(const Layout& laid);
  Outcome run_all(const Plan& plan, const Layout* laid, const std::stop_token& stop);
  void solve_dig(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_order(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_crew(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_flow_stage(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_heat(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
  void solve_prices(const Plan& plan, Outcome& outcome);
  void solve_report(const Plan& plan, Outcome& outcome, const std::stop_token& stop);
};

}  // namespace underlawn
