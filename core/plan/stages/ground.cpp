// SPDX-License-Identifier: GPL-3.0-or-later
// Troubles, coil and layout.
#include <algorithm>

#include "cost/pricing_troubles.h"
#include "pipe/pipe_size.h"
#include "plan/plan_troubles.h"
#include "plan/stages/stages.h"

namespace underlawn {

namespace {

Troubles find_troubles(const Plan& plan) {
  Troubles t;
  const auto add = [&t](std::vector<Trouble> part) {
    t.all.insert(t.all.end(), part.begin(), part.end());
    return !part.empty();
  };
  t.site = add(site_troubles(plan));
  t.wishes = add(wishes_troubles(plan));
  t.ground = add(ground_troubles(plan));
  add(heat_troubles(plan));
  t.flow = add(fluid_troubles(plan));
  t.pricing = add(pricing_troubles(plan.pricing, plan.units));
  add(loose_troubles(plan));
  return t;
}

Result<Coil> ask_coil(const CoilIn& in, UnitSystem units) {
  return solve_coil({in.unknown, in.loop_diameter, in.pitch, in.coil_length, in.trench_length,
                     in.pipe_diameter, units, in.pattern, in.level_distance, in.side_distance,
                     in.return_on_top});
}

CoilMade make_coil(const CoilIn& in) {
  const auto coil = ask_coil(in, UnitSystem::metric);
  return coil ? CoilMade{*coil, false} : CoilMade{Coil{0, 0, 0, 0, 0, 0, 0}, true};
}

// Where nothing can be placed the ground that could be built on is still worth seeing.
Layout place(const LayoutIn& in, const std::stop_token& stop) {
  if (!in.site_sound) return {};
  if (in.can_place) return make_layout(in.site, in.wishes, in.coil, stop);
  Layout bare;
  bare.wanted = in.wishes.circuits;
  if (auto region = buildable_region(in.site)) bare.buildable = std::move(*region);
  if (auto region = routable_region(in.site)) bare.routable = std::move(*region);
  return bare;
}

void append_new(std::vector<Trouble>& all, const std::vector<Trouble>& more) {
  for (const Trouble& t : more)
    if (std::find(all.begin(), all.end(), t) == all.end()) all.push_back(t);
}

}  // namespace

void Stages::take_laid(const Layout& laid) {
  layout.in.reset();
  if (layout.out == laid) return;
  layout.out = laid;
  ++layout.serial;
}

// Troubles, coil and layout.
void Stages::solve_ground(const Plan& plan, const Layout* laid, Outcome& outcome,
                          const std::stop_token& stop) {
  Plan untitled = plan;
  untitled.title = {};
  untitled.proposal = {};
  untitled.accepted.clear();
  const Troubles& found = troubles.run(std::move(untitled), runs.troubles, stop, find_troubles);
  outcome.troubles = found.all;

  const Wishes& w = plan.wishes;
  const auto pipe = find_pipe(w.pipe);  // unknown: named among the troubles, and an ordinary one stands in
  const double outside = pipe ? pipe->outside_diameter : CoilRequest{}.pipe_diameter;
  const CoilIn asked{w.unknown, w.loop_diameter, w.pitch,          w.coil_length,   w.trench_length,
                     outside,   w.pattern,       w.level_distance, w.side_distance, w.return_on_top};
  const CoilMade& made = coil.run(asked, runs.coil, stop, make_coil);
  outcome.coil = made.coil;
  // A wish that is out of bounds has been named already; the coil's own refusal of it would only repeat that.
  if (made.refused && !found.wishes) append_new(outcome.troubles, {ask_coil(asked, plan.units).error()});
  if (stop.stop_requested()) return;

  // Heights out of bounds are named among the troubles.
  outcome.terrain = terrain.run(
      found.site ? std::vector<SpotHeight>{} : plan.site.heights, runs.terrain, stop,
      [](std::vector<SpotHeight> heights) { return std::make_shared<const Terrain>(std::move(heights)); });
  if (laid != nullptr) {
    take_laid(*laid);
    outcome.layout = *laid;
    return;
  }
  LayoutIn in{for_layout(plan.site, w.level_floor), for_layout(w, made.coil), made.coil, !found.site,
              !found.wishes && !made.refused};
  outcome.layout =
      layout.run(std::move(in), runs.layout, stop, [&](const LayoutIn& i) { return place(i, stop); });
  append_new(outcome.troubles, outcome.layout.troubles);
}

}  // namespace underlawn
