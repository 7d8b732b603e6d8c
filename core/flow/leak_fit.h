// SPDX-License-Identifier: GPL-3.0-or-later
// The leak that explains a log of pressures best.
#pragma once

#include <vector>

#include "flow/test_band.h"
#include "flow/test_readings.h"

namespace underlawn {

struct LeakFit {
  double leak = 0, least = 0, most = 0;  // m3/s at the pressure shut in at
};

// Least squares over the leak (0 or more) with the nominal loop; the range is that of the fits with every
// corner of the bounds, widened by twice the standard error of the slope. `readings` from the shutting of the
// valve on, at least one after it. Refusals of test_curve.
Result<LeakFit> fit_leak(const BandTest& test, const LoopVolume& loop, const LoopState& state,
                         const TestBounds& bounds, const std::vector<PressureReading>& readings);

}  // namespace underlawn
