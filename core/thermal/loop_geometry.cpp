// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/loop_geometry.h"

#include "field/straight.h"
#include "pipe/pipe_size.h"
#include "thermal/upright_kernel.h"

namespace underlawn {
namespace {

double radius_of(const std::string& name) {
  const auto size = find_pipe(name);
  return size ? size->outside_diameter / 2 : 0.0167;
}

void lay_line(const Polyline& line, double depth, double radius, PipesInGround& out) {
  for (std::size_t i = 1; i < line.size(); ++i) {
    if (distance(line[i - 1], line[i]) < kSamePlace) continue;
    const Point aside = kRunPipesApart / 2 * left_normal(unit(line[i] - line[i - 1]));
    for (double side : {1.0, -1.0})
      out.pipes.push_back({{line[i - 1] + side * aside, line[i] + side * aside}, depth - radius, radius});
  }
}

void lay_straight(const Trench& t, double radius, PipesInGround& out) {
  const Polyline line = middle_line(t);
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point aside = left_normal(unit(line[i] - line[i - 1]));
    for (const StraightPipe& p : straight_pipes(t.coil)) {
      const Point off = p.across * aside;
      out.pipes.push_back({{line[i - 1] + off, line[i] + off}, t.depth - radius - p.up, radius});
    }
  }
}

void lay_trench(const Trench& t, double radius, PipesInGround& out) {
  if (is_straight(t.coil.pattern)) return lay_straight(t, radius, out);
  if (t.coil.pattern == CoilPattern::upright_coil)
    return lay_upright({t.head, t.end, t.coil, t.depth - radius, radius, t.bends}, out);
  out.coils.push_back({t.head, t.end, t.coil, kReturnAside, t.depth - radius, radius, t.bends});
}

}  // namespace

PipesInGround pipes_in_ground(const Layout& layout, const Wishes& wishes) {
  PipesInGround out;
  const double coil = radius_of(wishes.pipe), run = radius_of(wishes.header_pipe);
  for (const Trench& t : layout.trenches) lay_trench(t, coil, out);
  const Header& header = layout.header;
  for (std::size_t i = 0; i < header.legs.size(); ++i)
    lay_line(header.legs[i], depth_of_leg(header, i, wishes.run_depth), run, out);
  lay_line(layout.run.line, layout.run.depth.value_or(wishes.run_depth), run, out);
  return out;
}

}  // namespace underlawn
