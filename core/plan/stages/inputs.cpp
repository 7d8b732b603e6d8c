// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/stages/inputs.h"

namespace underlawn {

Site without_notes(Site site) {
  for (Feature& f : site.features) f.note.clear();
  return site;
}

// What a tape is pulled from, what stops it, what is crossed.
Site for_taping(Site site) {
  std::erase_if(site.features, [](const Feature& f) {
    return f.kind != FeatureKind::house && f.kind != FeatureKind::tree && f.kind != FeatureKind::no_dig &&
           !can_be_crossed(f.kind);
  });
  site.heights.clear();
  return site;
}

// The layout minds the heights only where floors are to be level.
Site for_layout(Site site, bool level_floor) {
  site = without_notes(std::move(site));
  if (!level_floor) site.heights.clear();
  return site;
}

Wishes for_layout(const Wishes& wishes, const Coil& coil) {
  const Wishes usual;
  Wishes w = wishes;
  w.pipe = usual.pipe;
  w.header_pipe = usual.header_pipe;
  w.bedding = usual.bedding;
  w.level_distance = usual.level_distance;  // the coil has them
  w.side_distance = usual.side_distance;
  w.return_on_top = usual.return_on_top;
  w.unknown = usual.unknown;
  w.pitch = coil.pitch;
  w.coil_length = coil.coil_length;
  w.trench_length = coil.trench_length;
  return w;
}

Wishes for_dig(const Wishes& wishes) {
  Wishes w;
  w.trench_width = wishes.trench_width;
  w.trench_depth = wishes.trench_depth;
  w.run_width = wishes.run_width;
  w.run_depth = wishes.run_depth;
  w.bedding = wishes.bedding;
  w.level_floor = wishes.level_floor;
  return w;
}

DigWishes for_dig(const DigWishes& how) {
  DigWishes sides;
  sides.coil_sides = how.coil_sides;
  sides.run_sides = how.run_sides;
  sides.slope = how.slope;
  return sides;
}

Wishes for_work(const Wishes& wishes) {
  Wishes w;
  w.run_width = wishes.run_width;
  w.run_depth = wishes.run_depth;
  return w;
}

// Where the pipes lie is the layout's; their sizes are not.
Wishes for_temperatures(const Wishes& wishes) {
  Wishes w;
  w.pipe = wishes.pipe;
  w.header_pipe = wishes.header_pipe;
  w.run_depth = wishes.run_depth;
  return w;
}

Plan for_checks(Plan plan) {
  plan.title = {};
  plan.proposal = {};
  plan.sheets = {};
  plan.dimensions.clear();
  return plan;
}

Plan for_figures(Plan plan) {
  plan.title = {};
  plan.proposal = {};
  plan.sheets = {};
  plan.accepted.clear();
  plan.dimensions.clear();
  plan.units = UnitSystem::metric;
  return plan;
}

}  // namespace underlawn
