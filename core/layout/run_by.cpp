// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/run_by.h"

#include <algorithm>

#include "base/say.h"
#include "layout/blocked_way.h"
#include "layout/fewer_bends.h"

namespace underlawn {

namespace {

Trouble no_way_to(std::size_t place, const std::string& in_way) {
  return {"run_by_not_reached", say("place {} that the run passes", std::to_string(place + 1)),
          in_way.empty() ? say("shut in") : say("in the way: {}", in_way),
          say("open ground with a way to it"), say("Move this place, or take it out.")};
}

}  // namespace

Result<Polyline> run_by_places(const Site& site, const Wishes& w, const Conduits& c) {
  for (std::size_t i = 0; i < w.run_by.size(); ++i)
    if (!contains(c.free, w.run_by[i])) return refuse(no_way_to(i, what_lies_at(site, w, w.run_by[i])));
  Router router(c.free, c.dear, kBend);
  std::size_t farthest = 0;
  for (const Polyline& stub : c.stubs) {
    Polyline line = stub;
    std::size_t i = 0;
    for (; i < w.run_by.size(); ++i) {
      if (distance(line.back(), w.run_by[i]) < kSamePlace) continue;
      const auto route = router.route(line.back(), w.run_by[i]);
      if (!route) break;
      const Polyline leg = with_fewer_bends(route->line, router.free());
      line.insert(line.end(), leg.begin() + 1, leg.end());
    }
    if (i == w.run_by.size()) return line;
    farthest = std::max(farthest, i);
  }
  return refuse(no_way_to(farthest, ""));
}

}  // namespace underlawn
