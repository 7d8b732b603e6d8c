// SPDX-License-Identifier: GPL-3.0-or-later
// The heat pump and the ground in one hour, solved together in closed form.
//
// On one straight piece of the performance table capacity c and heat from the ground f are linear in the
// entering temperature e, and with T the wall before this hour's heat
//     e = T - at_full f(e) - at_mean f(e) min(1, load/c(e))
// is linear in e where the unit runs all hour, and times c(e) quadratic where it does not. Hours wait for one
// another only through T, so all that needs no T is worked out beside: what an hour waits for is one root.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "house/heat_pump.h"

namespace underlawn {

// K/W: what a watt does to the entering temperature.
struct Pull {
  double at_full = 0;  // of the heat at full run: film, wall and half the water's own spread
  double at_mean = 0;  // of the hour's mean heat: the ground's first hour; > 0
};

struct UnitHour {
  double entering = 0;  // deg C
  double run = 0;       // fraction of the hour
  double full = 0;      // W taken from the ground at full run; negative in cooling
  double mean = 0;      // W, full times run
  double capacity = 0;  // W
  double power = 0;     // W at full run
  bool outside = false;
};

// One mode of a unit, against one loop. Remembers the piece of the table it was on, for speed only.
class UnitMode {
 public:
  // `table` as check_heat_pump asks.
  UnitMode(const std::vector<PerformancePoint>& table, bool heating, Pull pull);

  // wall: deg C before this hour's heat; load > 0 in W.
  UnitHour settle(double wall, double load) {
    double x = on_piece(pieces_[at_], wall, load);
    if (!(x >= pieces_[at_].least && x <= pieces_[at_].most)) {
      find_piece(wall, load);
      x = on_piece(pieces_[at_], wall, load);
    }
    const Piece& p = pieces_[at_];
    x = x > p.least ? std::min(x, p.most) : p.least;
    UnitHour hour;
    hour.entering = p.start.entering + x;
    hour.capacity = p.start.capacity + p.capacity_slope * x;
    hour.full = p.start.full + p.full_slope * x;
    hour.power = p.start.power + p.power_slope * x;
    hour.run = std::min(1.0, load / hour.capacity);
    // The hour's mean heat from the balance: to rounding run times full, and there sooner.
    hour.mean = (wall - p.level) * per_mean_ - p.mean_slope * x;
    hour.outside = p.outside;
    return hour;
  }

 private:
  struct State {
    double entering = 0, capacity = 0, power = 0, full = 0;
  };
  // From `start` on, x = entering - start.entering between least and most.
  struct Piece {
    State start;
    double capacity_slope = 0, power_slope = 0, full_slope = 0;
    double least = 0, most = 0;
    bool outside = false;
    bool flat = false;       // capacity is constant, or as good as
    double slope = 0;        // 1 + at_full f1
    double level = 0;        // deg C: wall at which x = 0 would need no mean heat
    double mean_slope = 0;   // W/K: slope/at_mean
    double per_twice_a = 0;  // 1/(2 slope c1)
    double per_full = 0;     // 1/(1 + (at_full + at_mean) f1)
  };
  Piece piece(const State& from, const State& to) const;

  double on_piece(const Piece& p, double wall, double load) const {
    const double x = part_run(p, wall, load);
    return p.start.capacity + p.capacity_slope * x >= load ? x : full_run(p, wall);
  }
  // Where the answer lies, from the piece of the hour before.
  void find_piece(double wall, double load);
  // Capacity times (e less what the right side gives): rises through nothing at the answer.
  double excess(const State& s, double wall, double load) const;
  // a x^2 + b x + c = 0 with a = slope c1, b = slope c0 + ahead c1 + h f1, c = ahead c0 + h f0: ahead is what
  // depends on the wall, h = at_mean load, 0 and 1 a straight line's start and slope.
  double part_run(const Piece& p, double wall, double load) const {
    const double h = pull_.at_mean * load, u = p.slope * p.start.capacity + h * p.full_slope;
    const double ahead = p.level - wall;
    if (p.flat) return -(ahead * p.start.capacity + h * p.start.full) / u;
    const double v = 2 * u - 4 * p.slope * p.start.capacity;
    const double w = u * u - 4 * p.slope * p.capacity_slope * h * p.start.full;
    const double y = p.capacity_slope * ahead;
    return (std::sqrt(y * (y + v) + w) - u - y) * p.per_twice_a;
  }
  double full_run(const Piece& p, double wall) const {
    return (wall - p.level - pull_.at_mean * p.start.full) * p.per_full;
  }

  std::vector<Piece> pieces_;  // below the table, between its points, above it
  Pull pull_;
  double per_mean_;  // W/K: 1/at_mean
  std::size_t at_ = 0;
};

}  // namespace underlawn
