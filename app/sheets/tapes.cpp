// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/tapes.h"

#include <algorithm>
#include <cmath>

#include "plan/tie_check.h"
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

// The pairs that sheets print to where this one leads: the stake's own and its second. Of what is no stake (a
// building's corner) the pair itself.
std::vector<Tie> pairs_to(const Site& site, const StakeOut& stake_out, const Tie& tie) {
  const auto own = std::ranges::find(stake_out.ties, tie.key, &Tie::key);
  if (tie.key.empty() || own == stake_out.ties.end()) return {tie};
  std::vector<Tie> all{*own};
  if (const auto second = second_tie(site, stake_out, *own)) all.push_back(*second);
  return all;
}

}  // namespace

PrintedTapes printed_tapes(const Plan& plan, const StakeOut& stake_out, const Tie& tie) {
  const bool us = plan.units == UnitSystem::us;
  const double coarse = us ? 0.0254 / 4 : 0.005, fine = us ? 0.0254 / 16 : 0.001;
  const auto pairs = pairs_to(plan.site, stake_out, tie);
  const bool all_back =
      std::ranges::all_of(pairs, [&](const Tie& pair) { return comes_back(stake_out, pair, coarse); });
  const double step = all_back ? coarse : fine;
  const Fineness fineness = Fineness::fine;
  const auto text = [&](double metres) {
    return text_of(print_quantity(Quantity::length, rounded(metres, step), plan.units, fineness));
  };
  return {text(tie.first_distance), text(tie.second_distance)};
}

}  // namespace underlawn::sheet
