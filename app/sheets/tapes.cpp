// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/tapes.h"

#include <cmath>

#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

double rounded(double metres, double step) {
  return std::round(metres / step) * step;
}

bool comes_back(const StakeOut& stake_out, Tie tie, double step) {
  tie.first_distance = rounded(tie.first_distance, step);
  tie.second_distance = rounded(tie.second_distance, step);
  const auto found = find_point_from_tie(stake_out, tie);
  return found && distance(*found, tie.at) <= kStakeError;
}

}  // namespace

PrintedTapes printed_tapes(const Plan& plan, const StakeOut& stake_out, const Tie& tie) {
  const bool us = plan.units == UnitSystem::us;
  const double coarse = us ? 0.0254 / 4 : 0.005, fine = us ? 0.0254 / 16 : 0.001;
  const double step = comes_back(stake_out, tie, coarse) ? coarse : fine;
  const Fineness fineness = Fineness::fine;
  const auto text = [&](double metres) {
    return text_of(print_quantity(Quantity::length, rounded(metres, step), plan.units, fineness));
  };
  return {text(tie.first_distance), text(tie.second_distance)};
}

}  // namespace underlawn::sheet
