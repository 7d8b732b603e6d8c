// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/corner_checks.h"

#include <algorithm>

#include "plan/tape.h"
#include "plan/tie_check.h"

namespace underlawn {

namespace {

bool can_be_pulled(const TapeGround& ground, Point a, Point b) {
  return tape_is_free(ground, a, b) && stays_on_lot(ground, a, b);
}

// Walls run counter-clockwise, the building on their left.
bool turns_inwards(const CornerCheck& k) {
  return cross(k.b.at - k.a.at, k.c.at - k.b.at) < 0;
}

std::vector<CornerCheck> of_building(const TapeGround& ground, const std::vector<Wall>& walls, double out) {
  std::vector<CornerCheck> all;
  for (std::size_t i = 0; i < walls.size(); ++i) {
    const BaseLine &in = walls[i].line, &next = walls[(i + 1) % walls.size()].line;
    CornerCheck k{in.from, in.to, next.to, out, 0, walls[i].house_id};
    const bool inwards = turns_inwards(k);
    if (inwards) k.out = 0;
    const Point from = inwards ? k.a.at : k.b.at + out * unit(k.b.at - k.a.at);
    k.length = distance(from, k.c.at);
    if (can_be_pulled(ground, from, k.c.at) && (inwards || can_be_pulled(ground, k.b.at, from)))
      all.push_back(std::move(k));
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const CornerCheck& a, const CornerCheck& b) { return (a.out == 0) > (b.out == 0); });
  if (all.size() + 3 > walls.size())
    all.resize(walls.size() < 3 ? 0 : std::min(all.size(), walls.size() - 3));
  return all;
}

}  // namespace

std::vector<CornerCheck> corner_checks(const Site& site, const StakeOut& stake_out, double out) {
  const TapeGround ground = tape_ground(site);
  const std::vector<Wall> walls = building_walls(site, stake_out);
  std::vector<CornerCheck> all;
  for (auto first = walls.begin(); first != walls.end();) {
    const auto last =
        std::find_if(first, walls.end(), [&](const Wall& w) { return w.house_id != first->house_id; });
    for (CornerCheck& k : of_building(ground, {first, last}, out)) all.push_back(std::move(k));
    first = last;
  }
  return all;
}

}  // namespace underlawn
