// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/ground_map.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>

#include "plane/region.h"
#include "thermal/bent.h"
#include "thermal/line_kernel.h"

namespace underlawn {
namespace {

using std::numbers::pi;

constexpr double kDay = 86400;
constexpr int kAroundNear = 16,
              kAroundFar = 4;  // strands of a coil's loops, to a place nearer than this or not
constexpr double kNear = 3;    // m
constexpr double kSmear = 24;  // of a loop's diameter: between two strands nothing is told apart

// Where the age of heat stands among the nodes, in steps of ln u: older is lower.
double place_of_age(double age, double diffusivity) {
  return std::log(1 / (std::sqrt(4 * diffusivity * age) * kFirstNode)) / kNodeStep;
}

// Integrals from 0 to s of the cubics through four nodes, of which the second stands at 0 and the third at 1.
std::array<double, 4> cubics_to(double s) {
  const double s2 = s * s, s3 = s2 * s, s4 = s3 * s;
  return {(-s4 / 4 + s3 - s2) / 6, (s4 / 4 - 2 * s3 / 3 - s2 / 2 + 2 * s) / 2, (-s4 / 4 + s3 / 3 + s2) / 2,
          (s4 / 4 - s2 / 2) / 6};
}

// Adds `heat` over the stretch low..high of places, shared between the nodes round it as the cubic through
// them would have it.
void share(double heat, double low, double high, KernelTable& out) {
  low = std::max(low, 0.0);
  high = std::min(high, kKernelNodes - 1.0);
  for (double from = low; from < high;) {
    const int node = std::min(static_cast<int>(from), kKernelNodes - 2);
    const double to = std::min(high, node + 1.0);
    const auto before = cubics_to(from - node), after = cubics_to(to - node);
    for (int i = 0; i < 4; ++i)
      if (const int n = node - 1 + i; n >= 0 && n < kKernelNodes) out[n] += heat * (after[i] - before[i]);
    from = to;
  }
}

}  // namespace

GroundReach::GroundReach(const PipesInGround& pipes, const GroundSoil& soil) : soil_(soil) {
  const auto strands_of = [](const CoilInGround& c, int around) {
    Thing out;
    for (const auto& [line, weight] : laid_strands(c, around))
      out.push_back({line, weight, c.depth, std::max(c.pipe_radius, c.coil.loop_diameter / kSmear)});
    return out;
  };
  for (const CoilInGround& c : pipes.coils) {
    near_.push_back(strands_of(c, kAroundNear));
    far_.push_back(strands_of(c, kAroundFar));
    legs_.push_back(c.bends.size() + 1);
  }
  for (const PipeInGround& p : pipes.pipes) {
    near_.push_back({{p.line, 1, p.depth, p.pipe_radius}});
    far_.push_back(near_.back());
    legs_.push_back(1);
  }
}

void GroundReach::add(const Thing& thing, Point p, double depth, KernelTable& out) const {
  for (const Strand& s : thing) {
    const double dz = depth - s.depth, up = depth + s.depth + 2 * soil_.image_raise;
    const double smear = s.smear * s.smear, away = distance(s.line, p);
    const double near = dz * dz + smear, far = up * up + smear;
    for (int n = 0; n < kKernelNodes; ++n) {
      const double u = kernel_node(n), u2 = u * u;
      if (u2 * (near + away * away) > kGone) break;
      out[n] += s.weight * gaussian_point(p, s.line, u) * (std::exp(-u2 * near) - std::exp(-u2 * far));
    }
  }
}

KernelTable GroundReach::at(Point p, double depth) const {
  KernelTable out{};
  for (std::size_t i = 0; i < near_.size(); ++i) {
    const auto first = near_[i].begin();
    const auto leg_ends = first + static_cast<std::ptrdiff_t>(std::min(legs_[i], near_[i].size()));
    const bool close =
        std::any_of(first, leg_ends, [p](const Strand& s) { return distance(s.line, p) < kNear; });
    add(close ? near_[i] : far_[i], p, depth, out);
  }
  const double scale = kNodeStep / (2 * std::pow(pi, 1.5) * soil_.conductivity);
  for (int n = 0; n < kKernelNodes; ++n) out[n] *= scale * kernel_node(n);
  return out;
}

KernelTable heat_by_node(const std::vector<double>& daily_heat, double pipe, double diffusivity, int day) {
  assert(pipe > 0 && diffusivity > 0 && day >= 0 && day < static_cast<int>(daily_heat.size()));
  KernelTable out{};
  double young = kKernelNodes - 1;
  for (int ago = 0; ago <= day; ++ago) {
    const double old = place_of_age((ago + 1) * kDay, diffusivity);
    share(daily_heat[static_cast<std::size_t>(day - ago)] / pipe, old, young, out);
    young = old;
  }
  return out;
}

double ground_fall(const KernelTable& reach, const KernelTable& heat) {
  double sum = 0;
  for (int n = 0; n < kKernelNodes; ++n) sum += reach[n] * heat[n];
  return sum;
}

GroundGrid make_ground_grid(const GroundReach& reach, const Box& box, double depth, double step, int most,
                            std::stop_token stop) {
  const double wide = box.high.x - box.low.x, high = box.high.y - box.low.y;
  GroundGrid grid;
  if (!(wide > 0 && high > 0) || !std::isfinite(wide * high)) return grid;
  grid.step = std::max({step, std::sqrt(wide * high / most), std::max(wide, high) / most});
  const int columns = static_cast<int>(std::ceil(wide / grid.step)) + 1;
  const int rows = static_cast<int>(std::ceil(high / grid.step)) + 1;
  grid.corner = box.low;
  grid.depth = depth;
  for (int r = 0; r < rows; ++r)
    for (int c = 0; c < columns; ++c) {
      if (stop.stop_requested()) return {};
      grid.reach.push_back(reach.at(grid.corner + Point{c * grid.step, r * grid.step}, depth));
    }
  grid.columns = columns;
  grid.rows = rows;
  return grid;
}

}  // namespace underlawn
