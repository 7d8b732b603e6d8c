// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/laydown.h"

#include <algorithm>

#include "dig/machine_ways.h"
#include "dig/pieces.h"

namespace underlawn {

namespace {

// What is kept off the circle.
struct Air {
  double trench = 0, line = 0;  // m
  bool ways = false;
};

Point middle_of_heads(const Layout& layout) {
  Point sum{0, 0};
  for (const Trench& t : layout.trenches) sum = sum + t.head;
  return (1.0 / static_cast<double>(layout.trenches.size())) * sum;
}

Region driven(const DigOrder& order, const Machine& excavator) {
  std::vector<Region> ways;
  for (const Drive& drive : drives_of(order, excavator))
    ways.push_back(buffered(*drive.way, drive.width / 2 + kBesideMachine));
  return unite(ways);
}

Region taken(const DigOrder& order, const DigWishes& how, const Air& air) {
  std::vector<Region> parts;
  for (const DigStep& step : order.steps) {
    parts.push_back(grown(region_of(footprint(step)), std::max(air.trench, how.spoil_off)));
    for (const Ring& ring : step.spoil) parts.push_back(region_of(ring));
  }
  if (air.ways) parts.push_back(driven(order, how.excavator));
  return unite(parts);
}

}  // namespace

void find_laydown(const DigGround& ground, const Layout& layout, const DigWishes& how, DigOrder& order) {
  order.laydown_radius = kLaydown;
  if (how.laydown) {
    order.laydown = how.laydown;
    return;
  }
  for (const Air& air : {Air{kLaydownOffTrench, kLaydownOffLine, true},
                         Air{kLaydownOffTrench, kLaydownOffLine, false}, Air{0, 0, false}}) {
    const Region open = air.line > 0 ? grown(ground.open, -air.line) : ground.open;
    const Region free = grown(subtract(open, taken(order, how, air)), -kLaydown);
    if (free.empty()) continue;
    order.laydown = Sight(free).nearest(middle_of_heads(layout));
    return;
  }
}

}  // namespace underlawn
