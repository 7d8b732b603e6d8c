// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/cut_once.h"

#include <algorithm>

#include "dig/cuts.h"
#include "dig/shared_stretch.h"

namespace underlawn {

namespace {

double run_depth_of(const Layout& layout, const Wishes& wishes) {
  return layout.run.depth.value_or(wishes.run_depth);
}

// Sand of this depth on the floor of the cut.
Cut sand_in(Cut cut, double bedding) {
  cut.top = cut.floor - std::min(bedding, cut.floor);
  return cut;
}

// Part of a coil trench from `top` down to `floor`, above its own floor.
Cut layer_of(const Trench& t, const FloorLevel& f, double slope, double top, double floor) {
  return {middle_line(t), t.width + 2 * slope * (f.mean_depth - floor), slope, top, floor};
}

double volume_of(double length, const Cut& layer) {
  return trench_volume(length, layer.width, layer.floor - layer.top, layer.slope);
}

// Every cut, and whose work it is.
class Cuts {
 public:
  Cuts(DigPlan& dig, const Layout& layout, const Wishes& wishes)
      : dig_(dig), layout_(layout), wishes_(wishes), parts_(parts_shared(layout.run.line, layout.trenches)) {
    add_trenches();
    const double width = wishes.run_width, slope = dig.run_slope;
    for (std::size_t i = 0; i < layout.header.legs.size(); ++i)
      add(dig.header,
          {layout.header.legs[i], width, slope, 0, depth_of_leg(layout.header, i, wishes.run_depth)});
    for (const Polyline& part : parts_.own)
      add(dig.run, {part, width, slope, 0, run_depth_of(layout, wishes)});
  }

  void count_earth() {
    const std::vector<double> twice = counted_twice(cuts_);
    for (std::size_t i = 0; i < twice.size(); ++i) {
      owners_[i]->bank_met += twice[i];
      owners_[i]->bank -= twice[i];
    }
  }

  void count_sand() {
    for (Cut& cut : cuts_) cut = sand_in(cut, wishes_.bedding);
    add_run_sand();
    const std::vector<double> twice = counted_twice(cuts_);
    for (std::size_t i = 0; i < twice.size(); ++i) {
      owners_[i]->bedding_met += twice[i];
      owners_[i]->bedding -= twice[i];
    }
  }

 private:
  void add(EarthWork& owner, Cut cut) {
    if (cut.line.size() < 2 || !(cut.floor > cut.top)) return;
    owners_.push_back(&owner);
    cuts_.push_back(std::move(cut));
  }

  void add_trenches() {
    for (std::size_t i = 0; i < layout_.trenches.size(); ++i)
      add(dig_.trenches[i],
          layer_of(layout_.trenches[i], dig_.floors[i], dig_.coil_slope, 0, dig_.floors[i].mean_depth));
  }

  void add_run_sand() {
    for (std::size_t i = 0; i < layout_.trenches.size(); ++i) {
      if (!(dig_.trenches[i].run_bedding > 0)) continue;
      const double floor = run_floor_over(dig_.floors[i], run_depth_of(layout_, wishes_), wishes_.bedding);
      Cut sand =
          sand_in(layer_of(layout_.trenches[i], dig_.floors[i], dig_.coil_slope, 0, floor), wishes_.bedding);
      for (const Polyline& part : parts_shared(layout_.run.line, {layout_.trenches[i]}).shared) {
        sand.line = part;
        add(dig_.trenches[i], sand);
      }
    }
  }

  DigPlan& dig_;
  const Layout& layout_;
  const Wishes& wishes_;
  SharedParts parts_;
  std::vector<EarthWork*> owners_;
  std::vector<Cut> cuts_;
};

}  // namespace

FloorLevel even_floor(double depth) {
  FloorLevel f;
  f.mean_depth = f.deepest = depth;
  f.mean_square = depth * depth;
  return f;
}

FloorLevel floor_of_header(const Header& header, double wished) {
  FloorLevel f = even_floor(wished);
  if (header.depths.empty() || !(header.length > 0)) return f;
  f = {};
  double metres = 0;
  for (std::size_t i = 0; i < header.legs.size(); ++i) {
    const double leg = length(header.legs[i]), depth = depth_of_leg(header, i, wished);
    metres += leg;
    f.mean_depth += leg * depth;
    f.mean_square += leg * depth * depth;
    f.deepest = std::max(f.deepest, depth);
  }
  if (!(metres > 0)) return even_floor(wished);
  f.mean_depth /= metres;
  f.mean_square /= metres;
  return f;
}

double run_floor_over(const FloorLevel& coil_trench, double run_depth, double bedding) {
  return std::clamp(coil_trench.mean_depth - bedding, 0.0, run_depth);
}

double shared_with_run(const Trench& trench, const Layout& layout) {
  return stretch_in_supply_trenches(layout.run.line, {trench});
}

void lay_run_over_coils(DigPlan& dig, const Layout& layout, const Wishes& wishes) {
  for (std::size_t i = 0; i < layout.trenches.size(); ++i) {
    const Trench& t = layout.trenches[i];
    const double shared = shared_with_run(t, layout);
    if (!(shared > 0)) continue;
    const FloorLevel& f = dig.floors[i];
    const double floor = run_floor_over(f, run_depth_of(layout, wishes), wishes.bedding);
    const double coil_sand = std::max(floor, f.mean_depth - wishes.bedding);
    EarthWork& w = dig.trenches[i];
    w.run_bedding = volume_of(shared, sand_in(layer_of(t, f, dig.coil_slope, 0, floor), wishes.bedding));
    w.under_run = volume_of(shared, layer_of(t, f, dig.coil_slope, floor, coil_sand));
    w.bedding += w.run_bedding;
  }
}

void count_once(DigPlan& dig, const Layout& layout, const Wishes& wishes) {
  Cuts cuts(dig, layout, wishes);
  cuts.count_earth();
  cuts.count_sand();
}

}  // namespace underlawn
