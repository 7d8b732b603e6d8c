// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/added_leg.h"

#include "plane/route.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

// The ground that a trench's coil keeps the middle line of a header out of.
Region kept_off(const Trench& t, double run_width) {
  const Polyline line = trimmed(middle_line(t), run_width, 0);
  return grown(region_of(strip_along(line, t.width)), run_width / 2 - kSamePlace);
}

// Corners of run and header, and the places of them nearest the head.
std::vector<Point> starts(const Layout& laid, Point head) {
  std::vector<Point> all;
  std::vector<Polyline> lines = laid.header.legs;
  lines.push_back(laid.run.line);
  for (const Polyline& line : lines)
    for (std::size_t i = 1; i < line.size(); ++i) {
      all.push_back(line[i]);
      all.push_back(nearest_on({line[i - 1], line[i]}, head));
    }
  return all;
}

}  // namespace

std::optional<Polyline> leg_to(const Wishes& wishes, const Layout& laid, const Trench& added) {
  if (laid.run.line.size() < 2) return std::nullopt;
  std::vector<Region> coils = {kept_off(added, wishes.run_width)};
  for (const Trench& t : laid.trenches) coils.push_back(kept_off(t, wishes.run_width));
  const Region free = subtract(grown(laid.routable, -wishes.run_width / 2), unite(coils));
  Router router(free, std::vector<DearGround>{}, 0);
  std::optional<Route> best;
  for (Point start : starts(laid, added.head))
    if (auto way = router.route(start, added.head, best ? best->cost : 1e9); way && way->line.size() > 1)
      best = std::move(way);
  return best ? std::optional(best->line) : std::nullopt;
}

}  // namespace underlawn
