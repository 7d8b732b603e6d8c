// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/field_trials.h"

#include <numbers>

#include "dig/dig.h"
#include "plan/circulation_of.h"
#include "plan/coil_ends.h"
#include "thermal/loop_geometry.h"

namespace underlawn {

namespace {

constexpr double kUsualRun = 15;  // m, where the lot says nothing

}  // namespace

Layout idealised_layout(const Wishes& wishes, const Coil& coil, int circuits, double run_length) {
  Layout out;
  out.wanted = out.fits = circuits;
  for (int i = 0; i < circuits; ++i)
    out.trenches.push_back({i + 1,
                            TrenchRole::field,
                            {0, wishes.spacing * i},
                            {coil.trench_length, wishes.spacing * i},
                            wishes.trench_width,
                            wishes.trench_depth,
                            coil});
  const double x = -wishes.run_width / 2, width = wishes.spacing * (circuits - 1);
  if (width > 0) out.header.legs = {{{x, 0}, {x, width}}};
  out.header.length = width;
  out.run = {{{x - run_length, 0}, {x, 0}}, run_length};
  return out;
}

FieldSize field_size(const Plan& plan, const Layout& layout, const Temperatures& t) {
  FieldSize out;
  out.circuits = static_cast<int>(layout.trenches.size());
  for (const Trench& trench : layout.trenches) {
    out.coil_pipe += trench.coil.coil_length;
    out.trench += length_of(trench);
  }
  out.coldest = t.simulation.coldest;
  out.warmest = t.simulation.warmest;
  if (!t.simulation.years.empty()) out.seasonal = t.simulation.years.back().performance();
  out.bank = make_dig(layout, plan.wishes, plan.ground, {}, plan.dig).total.bank;
  return out;
}

FieldTrials::FieldTrials(const Plan& plan, const Coil& coil, const Surroundings& surroundings,
                         KernelShelf& shelf, std::stop_token stop)
    : plan_(plan), coil_(coil), surroundings_(surroundings), shelf_(shelf), stop_(std::move(stop)) {
  plan_.wishes.pitch = coil.pitch;
  plan_.wishes.coil_length = coil.coil_length;
  plan_.wishes.trench_length = coil.trench_length;
}

FieldSize FieldTrials::worked_out(const Layout& layout, const Flow* flow) {
  const Circulation circulation = circulation_of(plan_, flow, layout);
  if (layout.trenches.empty() || circulation.heat_flow_rate <= 0) return {};
  return field_size(plan_, layout, temperatures(layout, circulation));
}

Temperatures FieldTrials::temperatures(const Layout& layout, const Circulation& circulation) {
  return solve_temperatures(pipes_in_ground(layout, plan_.wishes), surroundings_, plan_.thermal, circulation,
                            shelf_, stop_);
}

Temperatures FieldTrials::temperatures(int circuits) {
  const Layout& laid = layout_of(circuits);
  const Layout layout = laid.trenches.empty() ? on_open_ground(circuits) : laid;
  const auto flow = solve_flow(layout, plan_.wishes, flow_as_cut(plan_, layout, {}));
  return temperatures(layout, circulation_of(plan_, flow ? &*flow : nullptr, layout));
}

Layout FieldTrials::on_open_ground(int circuits) const {
  const double run = layouts_.empty() ? 0 : layouts_.begin()->second.run.length;
  return idealised_layout(plan_.wishes, coil_, circuits, run > 0 ? run : kUsualRun);
}

FieldSize FieldTrials::on_lot(const Layout& layout) {
  const auto flow = solve_flow(layout, plan_.wishes, flow_as_cut(plan_, layout, {}));
  FieldSize out = worked_out(layout, flow ? &*flow : nullptr);
  out.placed = out.circuits > 0;
  return out;
}

const Layout& FieldTrials::layout_of(int circuits) {
  const auto at = layouts_.find(circuits);
  if (at != layouts_.end()) return at->second;
  Wishes wishes = plan_.wishes;
  wishes.circuits = circuits;
  return layouts_[circuits] = make_layout(plan_.site, wishes, coil_, stop_);
}

const FieldSize& FieldTrials::placed(int circuits) {
  const auto at = placed_.find(circuits);
  if (at != placed_.end()) return at->second;
  const Layout& layout = layout_of(circuits);
  return placed_[circuits] = layout.trenches.empty() ? FieldSize{} : on_lot(layout);
}

const FieldSize& FieldTrials::idealised(int circuits) {
  const auto at = idealised_.find(circuits);
  if (at != idealised_.end()) return at->second;
  return idealised_[circuits] = worked_out(on_open_ground(circuits), nullptr);
}

FieldSize FieldTrials::with_coil(int circuits, const Coil& coil) {
  Layout layout = layout_of(circuits);
  for (Trench& t : layout.trenches) t.coil = coil;
  return on_lot(layout);
}

int FieldTrials::smallest_idealised() {
  for (int n = 1; n <= kMostCircuitsTried && !stop_.stop_requested(); ++n)
    if (holds(idealised(n), plan_.thermal)) return n;
  return 0;
}

}  // namespace underlawn
