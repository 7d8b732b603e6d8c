// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/supply_coil.h"

#include <algorithm>

#include "layout/legality.h"

namespace underlawn {

namespace {

constexpr double kTry = 0.25;  // m between places tried along the run

bool fits(const Site& site, const Wishes& w, const Header& header, const std::vector<Segment>& field,
          const Segment& coil) {
  for (const Segment& t : field)
    if (!pair_is_legal(coil, t, w)) return false;
  if (!trench_is_legal(site, coil, w.trench_width)) return false;
  return std::all_of(header.legs.begin(), header.legs.end(),
                     [&](const Polyline& leg) { return conduit_keeps_off(leg, coil, w); });
}

}  // namespace

std::optional<Segment> coil_in_run(const Site& site, const Wishes& w, const SupplyRun& run,
                                   const Header& header, const std::vector<Segment>& field, double length) {
  for (std::size_t i = run.line.size(); i-- > 1;) {
    const Point far = run.line[i], near = run.line[i - 1];
    const double room = distance(far, near) - length;
    if (room < 0) continue;
    const Point u = unit(near - far);
    double at = 0;
    while (at <= room) {
      const Segment coil{far + at * u, far + (at + length) * u};
      if (fits(site, w, header, field, coil)) return coil;
      at += kTry;
    }
  }
  return std::nullopt;
}

}  // namespace underlawn
