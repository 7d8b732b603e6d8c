// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/upright_kernel.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "field/coil.h"
#include "thermal/bent.h"
#include "thermal/even_table.h"
#include "thermal/line_kernel.h"

namespace underlawn {
namespace {

using std::numbers::pi;

constexpr double kSampleStep = 0.4;  // of 1/u, along the pipe
constexpr double kTableStep = 0.06;  // of 1/u, along the trench
// Above this, 1/m, the loops see themselves as straight, plus what is local to bends and crossings: K u is a
// + b/u, but for the wall.
constexpr double kStraightFrom = 60;

struct Sample {
  double x, z, ds;  // along the trench, depth, pipe
  double phase;     // 0..1 of a turn
  int times;        // in how many loops it is laid
};

// Midpoints of one loop from one phase to another; every loop is the same, moved on by the pitch.
void sample(const Coil& coil, double lowest, double from, double to, double step, int times,
            std::vector<Sample>& loop) {
  const int count = static_cast<int>(std::ceil((to - from) / step));
  const double radius = coil.loop_diameter / 2, c = coil.pitch / (2 * pi);
  for (int i = 0; i < count; ++i) {
    const double phase = from + (i + 0.5) * (to - from) / count, th = 2 * pi * phase;
    const double pipe = std::hypot(c + radius * std::sin(th), radius * std::cos(th));
    loop.push_back({radius + c * th - radius * std::cos(th), lowest - radius + radius * std::sin(th),
                    pipe * 2 * pi * (to - from) / count, phase, times});
  }
}

// The last loop may be a part of one, up to where the pipe is used up.
std::vector<Sample> sampled_loop(const Coil& coil, double turns, double lowest, int count) {
  const double whole = std::floor(turns);
  std::vector<Sample> loop;
  sample(coil, lowest, 0, turns - whole, 1.0 / count, static_cast<int>(whole) + 1, loop);
  sample(coil, lowest, turns - whole, 1, 1.0 / count, static_cast<int>(whole), loop);
  return loop;
}

// Sum over the loops of one phase and those of another, x apart within a loop, of exp(-u^2 distance^2).
double sum_over_loops(double x, double pitch, int times_a, int times_b, double u) {
  const double reach = std::sqrt(kGone) / u;
  const double first = std::max<double>(1 - times_a, std::ceil((-reach - x) / pitch));
  const double last = std::min<double>(times_b - 1, std::floor((reach - x) / pitch));
  double sum = 0;
  for (double n = first; n <= last; ++n) {
    const double pairs = std::min<double>(times_a, times_b - n) - std::max(0.0, -n);
    const double apart = u * (x + n * pitch);
    sum += pairs * std::exp(-apart * apart);
  }
  return sum;
}

// Sum over the loops of one phase of what each sees of the return pipe's length, in its line.
double sum_along_return(double x, double pitch, int times, double length, double u) {
  const double edge = 6 / u;  // erf is 1 beyond
  const int first = std::clamp(static_cast<int>(std::ceil((edge - x) / pitch)), 0, times);
  const int last =
      std::clamp(static_cast<int>(std::floor((length - edge - x) / pitch)), first - 1, times - 1);
  double sum = 2.0 * (last - first + 1);  // loops that see it go on to both sides
  const auto add = [&](int l) {
    const double behind = u * (x + l * pitch);
    sum += std::erf(behind) + std::erf(u * length - behind);
  };
  for (int l = 0; l < first; ++l) add(l);
  for (int l = last + 1; l < times; ++l) add(l);
  return sum * std::sqrt(pi) / (2 * u);
}

// Source less image for two depths, the target on the wall; `aside`: off the plane of the loops.
double vertical(double za, double zb, double aside, double radius, double raise, double u) {
  const double dz = za - zb, up = za + zb + 2 * raise, flat = aside * aside, u2 = u * u;
  return std::exp(-u2 * (dz * dz + flat + radius * radius)) - std::exp(-u2 * (up * up + flat));
}

class Upright {
 public:
  Upright(const UprightInGround& c, double raise) : c_(c), raise_(raise) {
    turns_ = angle_at_stop(c.coil) / (2 * pi);
    fewest_ = static_cast<int>(std::floor(turns_));
    widest_ = c.coil.loop_diameter + c.coil.pitch;
  }

  double loops_with_loops(double u) const {
    const auto loop = samples(u);
    std::optional<EvenTable> along[2][2];  // by whether the last part of a loop has the phase
    double sum = 0;
    for (std::size_t i = 0; i < loop.size(); ++i)
      for (std::size_t j = 0; j <= i; ++j) {
        const Sample &a = loop[i], &b = loop[j];
        const double dz = u * (a.z - b.z);
        if (dz * dz > kGone) continue;
        auto& table = along[a.times - fewest_][b.times - fewest_];
        if (!table)
          table.emplace(-widest_, widest_, kTableStep / u,
                        [&](double x) { return sum_over_loops(x, c_.coil.pitch, a.times, b.times, u); });
        sum += (i == j ? 1 : 2) * a.ds * b.ds * (*table)(b.x - a.x) * seen(a.z, b.z, 0, u);
      }
    return sum;
  }

  double loops_with_return(double u) const {
    std::optional<EvenTable> along[2];
    double sum = 0;
    for (const Sample& a : samples(u)) {
      const double dz = u * (a.z - return_depth());
      if (dz * dz > kGone) continue;
      auto& table = along[a.times - fewest_];
      if (!table)
        table.emplace(0, widest_, kTableStep / u, [&](double x) {
          return sum_along_return(x, c_.coil.pitch, a.times, c_.coil.return_pipe, u);
        });
      sum += a.ds * (*table)(a.x) * seen(a.z, return_depth(), c_.return_offset(), u);
    }
    return sum;
  }

  double return_with_return(double u) const {
    const Segment back{{0, 0}, {c_.coil.return_pipe, 0}};
    return gaussian_pair(back, back, u) * seen(return_depth(), return_depth(), 0, u);
  }

 private:
  double return_depth() const { return c_.return_depth(); }
  double seen(double za, double zb, double aside, double u) const {
    return vertical(za, zb, aside, c_.pipe_radius, raise_, u);
  }
  std::vector<Sample> samples(double u) const {
    const double loop = c_.coil.loop_pipe / c_.coil.loops;
    const int count = std::max(24, static_cast<int>(std::ceil(loop * u / kSampleStep)));
    return sampled_loop(c_.coil, turns_, c_.depth, count);
  }

  const UprightInGround& c_;
  double raise_, widest_, turns_;
  int fewest_;
};

}  // namespace

KernelTable upright_kernel(const UprightInGround& c, double image_raise) {
  const Upright upright(c, image_raise);
  KernelTable table{};
  double local = 0;
  for (int i = 0; i < kKernelNodes; ++i) {
    const double u = kernel_node(i);
    if (c.coil.return_pipe > 0) table[i] = upright.return_with_return(u);
    if (!(c.coil.loops > 0)) continue;
    if (c.coil.return_pipe > 0) table[i] += 2 * upright.loops_with_return(u);
    const double straight = std::sqrt(pi) * c.coil.loop_pipe / u;
    const double wall = std::exp(-u * u * c.pipe_radius * c.pipe_radius);
    if (u <= kStraightFrom) {
      const double loops = upright.loops_with_loops(u);
      local = (loops / wall - straight) * u * u;
      table[i] += loops;
    } else {
      table[i] += (straight + local / (u * u)) * wall;
    }
  }
  if (c.bends.empty()) return table;
  const KernelTable bends = change_by_bends(c, image_raise);
  for (int i = 0; i < kKernelNodes; ++i) table[i] += bends[i];
  return table;
}

std::vector<PipeInGround> upright_strands(const UprightInGround& c, int owner) {
  std::vector<PipeInGround> strands;
  const std::vector<LegAxis> legs = leg_axes(c.head, c.bends, c.end);
  const auto add = [&](double from, double to, double across, double depth, double pipe, double centre) {
    if (!(to > from) || !(pipe > 0)) return;
    for (const LegPiece& p : cut_at_bends(from, to, centre, legs)) {
      const Point x = p.leg.along, off = p.leg.origin + across * left_normal(x);
      strands.push_back(
          {{off + p.from * x, off + p.to * x}, depth, c.pipe_radius, pipe / (to - from), owner});
    }
  };
  add(0, c.coil.return_pipe, c.return_offset(), c.return_depth(), c.coil.return_pipe, 0);
  if (!(c.coil.loops > 0)) return strands;
  constexpr int kAround = 6;
  std::vector<Sample> loop;
  sample(c.coil, c.depth, 0, 1, 1.0 / kAround, 1, loop);
  double whole = 0;
  for (const Sample& s : loop) whole += s.ds;
  for (const Sample& s : loop) {
    const double start = s.x - c.coil.pitch * s.phase;  // the curve's circle, without its advance
    add(start, start + c.coil.loops * c.coil.pitch, 0, s.z, c.coil.loop_pipe * s.ds / whole,
        c.coil.loop_diameter / 2 - start);
  }
  return strands;
}

void lay_upright(const UprightInGround& coil, PipesInGround& pipes) {
  for (const PipeInGround& p : upright_strands(coil, static_cast<int>(pipes.upright.size())))
    pipes.pipes.push_back(p);
  pipes.upright.push_back(coil);
}

}  // namespace underlawn
