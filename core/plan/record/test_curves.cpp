// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/test_curves.h"

namespace underlawn {

Result<TestCurves> test_curves(const LoopVolume& loop, const LoopTest& test, UnitSystem units) {
  auto planned = planned_test(test, loop);
  if (!planned) return refuse(planned.error());
  const TestBounds bounds;
  const auto prepared = prepare_band(planned->programme, planned->state, bounds);
  if (!prepared) return refuse(prepared.error());
  auto band = test_band(*prepared, loop, planned->state, bounds);
  if (!band) return refuse(band.error());
  const auto smallest = smallest_visible_leak(*prepared, *band, loop, planned->state);
  if (!smallest) return refuse(smallest.error());
  auto leak = leak_curve(*prepared, loop, planned->state, *smallest);
  if (!leak) return refuse(leak.error());
  TestCurves made{std::move(*planned), std::move(*band), std::move(*leak), *smallest, {}};
  if (test.readings.empty()) return made;
  if (auto judged =
          judge_test(made.test.programme, loop, made.test.state, {}, test.readings, test.pumped, units))
    made.judgement = std::move(*judged);
  return made;
}

}  // namespace underlawn
