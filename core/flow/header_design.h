// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes for run and header: the lightest that keep circuits in balance, the pump able and the loop flushable.
#pragma once

#include <optional>
#include <vector>

#include "flow/loop_network.h"
#include "flow/purge.h"

namespace underlawn {

// kg/m of polyethylene, wall 6 % above the least, 955 kg/m3 (makers' weights): what stands for the price of
// pipe as long as no prices are entered.
double pipe_mass(const PipeSize& size);

struct HeaderChoice {
  HeaderArrangement arrangement = HeaderArrangement::direct_return;
  HeaderSizes sizes;                // one for each step of the header
  double mass = 0;                  // kg of polyethylene in run, header and leads
  double imbalance = 0;             // at design temperature and flow
  double head = 0;                  // m, of the whole loop there
  std::optional<double> most_head;  // m, the limit it was held to
  Purge flushing;
  bool balanced = false, head_holds = false, purge_holds = false;
  bool holds() const { return balanced && head_holds && purge_holds; }
  // All circuits together, or one by one where only that can.
  const PurgeRun& purge() const {
    return !flushing.together.cart_can && flushing.one_by_one ? *flushing.one_by_one : flushing.together;
  }
};

// The lightest of all sizes that narrow from step to step (never wider, none narrower than the coils, of the
// header pipe's dimension ratio) and hold wishes.most_imbalance, the head and the flush cart's purge. What is
// typed stays; with step_down false all steps are one size. All are looked at with even flows and the likely
// ones, lightest first, solved in full. Headers of more than 12 steps share sizes in groups of steps. Where
// nothing holds all three: the lightest whose misses, shares of their limits, add up to 0.05 over the least,
// of the same wishes. Without a flush cart the purge holds. Refuses what flow_troubles and loop_network
// refuse.
Result<HeaderChoice> design_header(const Layout& layout, const Wishes& wishes, const FlowWishes& flow);

// Direct return, reverse return and home runs, each at its lightest, in this order.
Result<std::vector<HeaderChoice>> header_alternatives(const Layout& layout, const Wishes& wishes,
                                                      const FlowWishes& flow);

}  // namespace underlawn
