// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/unit_in_hour.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace underlawn {

UnitMode::Piece UnitMode::piece(const State& from, const State& to) const {
  // Slower than this a K and the quadratic term is beyond the twelfth digit, where it would only cancel.
  constexpr double kFlat = 1e-9;
  const double step = std::max(to.entering - from.entering, 1e-9);
  Piece p;
  p.start = from;
  p.capacity_slope = (to.capacity - from.capacity) / step;
  p.power_slope = (to.power - from.power) / step;
  p.full_slope = (to.full - from.full) / step;
  p.most = step;
  p.slope = 1 + pull_.at_full * p.full_slope;
  p.mean_slope = p.slope * per_mean_;
  p.level = from.entering + pull_.at_full * from.full;
  p.flat = std::abs(p.slope * p.capacity_slope) < kFlat * from.capacity;
  p.per_twice_a = p.flat ? 0 : 1 / (2 * p.slope * p.capacity_slope);
  p.per_full = 1 / (p.slope + pull_.at_mean * p.full_slope);
  return p;
}

UnitMode::UnitMode(const std::vector<PerformancePoint>& table, bool heating, Pull pull)
    : pull_(pull), per_mean_(1 / pull.at_mean) {
  constexpr double kFar = 1e6;  // K
  assert(table.size() >= 2 && pull.at_mean > 0);
  const auto state = [&](const PerformancePoint& p) {
    return State{p.entering, p.capacity, p.power, heating ? p.capacity - p.power : -(p.capacity + p.power)};
  };
  pieces_.push_back(piece(state(table.front()), state(table.front())));
  pieces_.back().least = -kFar;
  for (std::size_t i = 1; i < table.size(); ++i)
    pieces_.push_back(piece(state(table[i - 1]), state(table[i])));
  pieces_.push_back(piece(state(table.back()), state(table.back())));
  pieces_.back().most = kFar;
  pieces_.front().outside = pieces_.back().outside = true;
}

double UnitMode::excess(const State& s, double wall, double load) const {
  return (s.entering - wall + pull_.at_full * s.full) * s.capacity +
         pull_.at_mean * s.full * std::min(s.capacity, load);
}

void UnitMode::find_piece(double wall, double load) {
  while (at_ + 1 < pieces_.size() && excess(pieces_[at_ + 1].start, wall, load) < 0) ++at_;
  while (at_ > 0 && excess(pieces_[at_].start, wall, load) > 0) --at_;
}

}  // namespace underlawn
