// SPDX-License-Identifier: GPL-3.0-or-later
// How high ground and floor are at the ends of each trench.
#include <algorithm>

#include "base/say.h"
#include "dig/cut_once.h"
#include "plan/figures/groups.h"
#include "site/terrain.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

constexpr const char* kBetween = mark("between spot heights, over flat triangles (Delaunay)");

void add_ends(Figures& all, const std::string& key, const std::string& name, const FloorLevel& f,
              bool level) {
  const How ground{translated(kBetween), {"site.spot_heights"}, ""};
  derived(all, key + ".ground_head", say("{}, ground at the head", name), f.ground_head, Q::length, ground);
  derived(all, key + ".ground_end", say("{}, ground at the end", name), f.ground_end, Q::length, ground);
  const How low{say("lowest ground along the trench - depth"), {"site.spot_heights", key + ".depth"}, ""};
  derived(all, key + ".floor_head", say("{}, floor at the head", name), f.floor_head, Q::length,
          level ? low : How{say("ground - depth"), {key + ".ground_head", key + ".depth"}, ""});
  derived(all, key + ".floor_end", say("{}, floor at the end", name), f.floor_end, Q::length,
          level ? low : How{say("ground - depth"), {key + ".ground_end", key + ".depth"}, ""});
  derived(all, key + ".rise", say("{}, rise of the floor from head to end", name), f.floor_end - f.floor_head,
          Q::length,
          {say("floor at the end - floor at the head"), {key + ".floor_end", key + ".floor_head"}, ""});
}

void add_depths(Figures& all, const std::string& key, const std::string& name, const FloorLevel& f) {
  const std::vector<std::string> from = {"site.spot_heights", key + ".floor_head", key + ".length"};
  derived(all, key + ".mean_depth", say("{}, mean depth", name), f.mean_depth, Q::length,
          {say("mean over the length of ground - floor"), from, ""});
  derived(all, key + ".mean_square_depth", say("{}, mean of the depth squared", name), f.mean_square, Q::area,
          {say("mean over the length of (ground - floor)^2"), from, ""});
  derived(all, key + ".deepest", say("{}, greatest depth", name), f.deepest, Q::length,
          {say("highest ground along the trench - floor"), from, ""});
}

// Depths that were measured as dug: of a trench at both ends, of each leg of the header, of the run.
void add_dug(Figures& all, const std::string& key, const std::string& name, double mean, double mean_square) {
  derived(all, key + ".mean_depth", say("{}, mean depth", name), mean, Q::length,
          {say("mean over the length of the depths as dug"), {}, ""});
  derived(all, key + ".mean_square_depth", say("{}, mean of the depth squared", name), mean_square, Q::area,
          {say("mean over the length of the depths as dug, squared"), {}, ""});
}

void add_depths_as_dug(Figures& all, const Outcome& outcome) {
  const auto& trenches = outcome.layout.trenches;
  for (std::size_t i = 0; i < std::min(trenches.size(), outcome.dig.floors.size()); ++i)
    if (trenches[i].fall != 0)
      add_dug(all, trench_key(trenches[i].number), say("Trench {}", std::to_string(trenches[i].number)),
              outcome.dig.floors[i].mean_depth, outcome.dig.floors[i].mean_square);
  const Header& header = outcome.layout.header;
  const FloorLevel legs = floor_of_header(header, 0);
  if (!header.depths.empty()) add_dug(all, "header", say("Header"), legs.mean_depth, legs.mean_square);
  if (const auto depth = outcome.layout.run.depth)
    add_dug(all, "run", say("Supply run"), *depth, *depth * *depth);
}

}  // namespace

void add_floors(Figures& all, const Plan& plan, const Outcome& outcome) {
  add_depths_as_dug(all, outcome);
  if (!terrain_of(outcome).is_known()) return;
  typed(all, "site.spot_heights", say("Spot heights"), static_cast<double>(plan.site.heights.size()),
        Q::count);
  const auto& trenches = outcome.layout.trenches;
  for (std::size_t i = 0; i < std::min(trenches.size(), outcome.dig.floors.size()); ++i) {
    const std::string key = trench_key(trenches[i].number);
    const std::string name = say("Trench {}", std::to_string(trenches[i].number));
    add_ends(all, key, name, outcome.dig.floors[i], plan.wishes.level_floor);
    if (plan.wishes.level_floor && trenches[i].fall == 0) add_depths(all, key, name, outcome.dig.floors[i]);
  }
}

}  // namespace underlawn::figures
