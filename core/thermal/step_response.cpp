// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/step_response.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "thermal/line_kernel.h"
#include "thermal/pair_kernels.h"

namespace underlawn {
namespace {

using std::numbers::pi;

// Plan kernels of pairs whose depths and pipe agree; H is summed before depth is looked at.
struct Level {
  double upper, lower;  // m, depths
  double radius;        // m: the target lies on the wall of the thicker pipe
  KernelTable plan{};
};

class Levels {
 public:
  KernelTable& at(double za, double zb, double radius) {
    const double upper = std::min(za, zb), lower = std::max(za, zb);
    for (Level& l : levels_)
      if (l.upper == upper && l.lower == lower && l.radius == radius) return l.plan;
    return levels_.emplace_back(Level{upper, lower, radius}).plan;
  }

  // Source less image.
  KernelTable sum(double raise) const {
    KernelTable out{};
    for (const Level& l : levels_) {
      const double dz = l.lower - l.upper, up = l.lower + l.upper + 2 * raise;
      for (int n = 0; n < kKernelNodes; ++n) {
        const double u2 = kernel_node(n) * kernel_node(n);
        out[n] += l.plan[n] * (std::exp(-u2 * (dz * dz + l.radius * l.radius)) - std::exp(-u2 * up * up));
      }
    }
    return out;
  }

 private:
  std::vector<Level> levels_;
};

struct Lying {
  double depth, radius;
  int owner = -1;  // of a part of an upright coil
};

std::vector<Lying> lying(const PipesInGround& pipes) {
  std::vector<Lying> out;
  for (const CoilInGround& c : pipes.coils) out.push_back({c.depth, c.pipe_radius});
  for (const PipeInGround& p : pipes.pipes) out.push_back({p.depth, p.pipe_radius, p.owner});
  return out;
}

void add(const KernelTable& plan, double times, KernelTable& sum) {
  for (int n = 0; n < kKernelNodes; ++n) sum[n] += times * plan[n];
}

void add_selves(const PipesInGround& pipes, const std::vector<KernelTable>& self, Levels& levels) {
  for (std::size_t i = 0; i < pipes.coils.size(); ++i) {
    const CoilInGround& c = pipes.coils[i];
    add(self[i], 1, levels.at(c.depth, c.depth, c.pipe_radius));
  }
  for (const PipeInGround& p : pipes.pipes) {
    if (p.owner >= 0) continue;
    KernelTable& sum = levels.at(p.depth, p.depth, p.pipe_radius);
    const SegmentPair itself(p.line, p.line);
    for (int n = 0; n < kKernelNodes; ++n) sum[n] += itself.at(kernel_node(n));
  }
}

void add_neighbours(const PipesInGround& pipes, const PairKernels& pairs, Levels& levels) {
  const std::vector<Lying> things = lying(pipes);
  for (std::size_t j = 1; j < things.size(); ++j)
    for (std::size_t i = 0; i < j; ++i) {
      const Lying &a = things[i], &b = things[j];
      if (a.owner >= 0 && a.owner == b.owner) continue;
      add(pairs.of(i, j), 2, levels.at(a.depth, b.depth, std::max(a.radius, b.radius)));
    }
}

}  // namespace

double total_pipe(const PipesInGround& pipes) {
  double sum = 0;
  for (const CoilInGround& c : pipes.coils) sum += c.coil.loop_pipe + c.coil.return_pipe;
  for (const PipeInGround& p : pipes.pipes) sum += p.pipe();
  return sum;
}

StepResponse make_step_response(const PipesInGround& pipes, const std::vector<KernelTable>& self,
                                double image_raise, PairKernels& pairs) {
  assert(self.size() == pipes.coils.size() + pipes.upright.size());
  pairs.update(pipes);
  Levels levels;
  add_selves(pipes, self, levels);
  add_neighbours(pipes, pairs, levels);
  KernelTable all = levels.sum(image_raise);
  for (std::size_t i = 0; i < pipes.upright.size(); ++i) add(self[pipes.coils.size() + i], 1, all);
  return StepResponse(all, total_pipe(pipes));
}

StepResponse make_step_response(const PipesInGround& pipes, const std::vector<KernelTable>& self,
                                double image_raise) {
  PairKernels pairs;
  return make_step_response(pipes, self, image_raise, pairs);
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
