// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/step_response.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "plane/region.h"
#include "thermal/coil_kernel.h"
#include "thermal/line_kernel.h"

namespace underlawn {
namespace {

using std::numbers::pi;

// Straight strands with their depth; strands of one coil have one `owner`, whose own table says how they
// meet.
struct Placed {
  Segment line;
  double weight;  // metres of pipe per metre of line
  double depth;
  double radius;
  int owner;  // coil index, or -1 for a pipe of its own
};

void place_coil(const CoilInGround& coil, int owner, std::vector<Placed>& out) {
  const Point x = unit(coil.end - coil.head), y = left_normal(x);
  const auto on_lot = [&](Point p) { return coil.head + p.x * x + p.y * y; };
  for (const Strand& s : coil_strands(coil.coil, coil.return_offset)) {
    const double length = distance(s.line.a, s.line.b);
    if (length > 0)
      out.push_back(
          {{on_lot(s.line.a), on_lot(s.line.b)}, s.pipe / length, coil.depth, coil.pipe_radius, owner});
  }
}

std::vector<Placed> placed_strands(const PipesInGround& pipes) {
  std::vector<Placed> placed;
  for (std::size_t i = 0; i < pipes.coils.size(); ++i)
    place_coil(pipes.coils[i], static_cast<int>(i), placed);
  for (const PipeInGround& p : pipes.pipes) placed.push_back({p.line, 1, p.depth, p.pipe_radius, -1});
  return placed;
}

// Source less image, for two depths; the target lies on its wall.
double vertical(double za, double zb, double radius, double raise, double u) {
  const double dz = za - zb, up = za + zb + 2 * raise;
  return std::exp(-u * u * (dz * dz + radius * radius)) - std::exp(-u * u * up * up);
}

void add_selves(const PipesInGround& pipes, const std::vector<KernelTable>& self, double raise,
                KernelTable& sum) {
  for (int n = 0; n < kKernelNodes; ++n) {
    const double u = kernel_node(n);
    for (std::size_t i = 0; i < pipes.coils.size(); ++i) {
      const CoilInGround& c = pipes.coils[i];
      sum[n] += self[i][n] * vertical(c.depth, c.depth, c.pipe_radius, raise, u);
    }
    for (const PipeInGround& p : pipes.pipes)
      sum[n] += gaussian_pair(p.line, p.line, u) * vertical(p.depth, p.depth, p.pipe_radius, raise, u);
  }
}

void add_pair(const Placed& a, const Placed& b, double raise, KernelTable& sum) {
  const double apart = std::hypot(distance(a.line, b.line), a.depth - b.depth);
  const double radius = std::max(a.radius, b.radius);
  for (int n = 0; n < kKernelNodes; ++n) {
    const double u = kernel_node(n);
    if (u * u * apart * apart > kGone) break;
    const double plan = a.weight * b.weight * gaussian_pair(a.line, b.line, u);
    sum[n] += 2 * plan * vertical(a.depth, b.depth, radius, raise, u);
  }
}

void add_neighbours(const PipesInGround& pipes, double raise, KernelTable& sum) {
  const std::vector<Placed> placed = placed_strands(pipes);
  for (std::size_t i = 0; i < placed.size(); ++i)
    for (std::size_t j = i + 1; j < placed.size(); ++j)
      if (placed[i].owner < 0 || placed[i].owner != placed[j].owner)
        add_pair(placed[i], placed[j], raise, sum);
}

}  // namespace

double total_pipe(const PipesInGround& pipes) {
  double sum = 0;
  for (const CoilInGround& c : pipes.coils) sum += c.coil.loop_pipe + c.coil.return_pipe;
  for (const PipeInGround& p : pipes.pipes) sum += distance(p.line.a, p.line.b);
  return sum;
}

StepResponse make_step_response(const PipesInGround& pipes, const std::vector<KernelTable>& self,
                                double image_raise) {
  assert(self.size() == pipes.coils.size());
  KernelTable sum{};
  add_selves(pipes, self, image_raise, sum);
  add_neighbours(pipes, image_raise, sum);
  return StepResponse(sum, total_pipe(pipes));
}

// The integrand in ln u is smooth; a cubic Hermite spline with fourth-order slopes carries it between nodes.
StepResponse::StepResponse(const KernelTable& k_of_u, double pipe) {
  for (int i = 0; i < kKernelNodes; ++i)
    value_[i] = k_of_u[i] * kernel_node(i) / (2 * std::pow(pi, 1.5) * pipe);
  // Beyond the ends: below the first node the integrand falls as u^3, above the last there is nothing.
  const auto at = [&](int i) {
    if (i < 0) return value_[0] * std::exp(3 * kNodeStep * i);
    return i < kKernelNodes ? value_[i] : 0.0;
  };
  for (int i = 0; i < kKernelNodes; ++i)
    slope_[i] = (8 * (at(i + 1) - at(i - 1)) - (at(i + 2) - at(i - 2))) / (12 * kNodeStep);
  for (int i = kKernelNodes - 2; i >= 0; --i)
    above_[i] = above_[i + 1] + kNodeStep * (value_[i] + value_[i + 1]) / 2 +
                kNodeStep * kNodeStep * (slope_[i] - slope_[i + 1]) / 12;
}

double StepResponse::operator()(double conductivity, double diffusivity, double t) const {
  if (t <= 0) return 0;
  const double u = 1 / std::sqrt(4 * diffusivity * t);
  const double place = std::log(u / kFirstNode) / kNodeStep;
  if (place >= kKernelNodes - 1) return 0;
  if (place <= 0) return steady(conductivity);
  const int i = static_cast<int>(place);
  const double s = place - i, h = kNodeStep;
  // integral of the Hermite cubic from s to 1, in units of h
  const double s2 = s * s, s3 = s2 * s, s4 = s3 * s;
  const double v0 = 0.5 - (s - s3 + s4 / 2), v1 = 0.5 - (s3 - s4 / 2);
  const double d0 = 1.0 / 12 - (s2 / 2 - 2 * s3 / 3 + s4 / 4), d1 = -1.0 / 12 - (-s3 / 3 + s4 / 4);
  const double part =
      h * (v0 * value_[i] + v1 * value_[i + 1]) + h * h * (d0 * slope_[i] + d1 * slope_[i + 1]);
  return (part + above_[i + 1]) / conductivity;
}

double StepResponse::steady(double conductivity) const {
  // Below the first node the integrand falls as u^3 (source and image cancel): a third of its value is left.
  return (above_[0] + value_[0] / 3) / conductivity;
}

}  // namespace underlawn
