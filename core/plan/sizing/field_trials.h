// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of one coil in any number, tried: on the lot, and on open ground where the lot is too small.
#pragma once

#include <map>
#include <stop_token>

#include "flow/hydraulics.h"
#include "plan/sizing/field_size.h"
#include "thermal/temperatures.h"

namespace underlawn {

inline constexpr int kMostCircuitsTried = 40;

class FieldTrials {
 public:
  // The plan must be sound (no plan_troubles) and its wishes those to be tried; `shelf` may be shared by
  // trials one after another.
  FieldTrials(const Plan& plan, const Coil& coil, const Surroundings& surroundings, KernelShelf& shelf,
              std::stop_token stop);

  // Laid out by make_layout with its flow, as solve() does. Where the lot takes fewer, of as many as it
  // takes; no circuits where it takes none. Kept: asked again, nothing is worked out.
  const FieldSize& placed(int circuits);
  // Parallel trenches at the spacing, heads in line, a header along them and a run as long as the lot's own
  // (or 15 m where none is laid); the flow shared equally. 1..kMostCircuitsTried.
  const FieldSize& idealised(int circuits);
  // The layout that placed(n) tried, with another coil in the same trenches.
  FieldSize with_coil(int circuits, const Coil& coil);

  // In full, of placed(n); where the lot takes nothing, of idealised(n).
  Temperatures temperatures(int circuits);

  // Smallest number that holds both limits on open ground; 0 where none up to kMostCircuitsTried does.
  int smallest_idealised();

 private:
  const Layout& layout_of(int circuits);
  FieldSize worked_out(const Layout& layout, const Flow* flow);
  Temperatures temperatures(const Layout& layout, const Circulation& circulation);
  Layout on_open_ground(int circuits) const;
  FieldSize on_lot(const Layout& layout);

  Plan plan_;
  Coil coil_;
  const Surroundings& surroundings_;
  KernelShelf& shelf_;
  std::stop_token stop_;
  std::map<int, Layout> layouts_;
  std::map<int, FieldSize> placed_, idealised_;
};

// The answer of a solved plan as a field size; nothing laid or no temperatures: no circuits.
FieldSize field_size(const Plan& plan, const Layout& layout, const Temperatures& temperatures);

// Heads in line at x = 0, trenches along +x at the spacing.
Layout idealised_layout(const Wishes& wishes, const Coil& coil, int circuits, double run_length);

}  // namespace underlawn
