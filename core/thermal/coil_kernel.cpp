// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/coil_kernel.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "thermal/bent.h"
#include "thermal/line_kernel.h"

namespace underlawn {
namespace {

using std::numbers::pi;

// The pipe of one loop as midpoint samples; every loop is the same, moved on by the pitch.
struct Loop {
  struct Sample {
    Point at;
    double ds;
  };
  std::vector<Sample> samples;
};

Loop sampled_loop(const Coil& coil, int count) {
  const double radius = coil.loop_diameter / 2, c = coil.pitch / (2 * pi), step = 2 * pi / count;
  Loop loop;
  for (int i = 0; i < count; ++i) {
    const double th = (i + 0.5) * step;
    const Point at{radius + c * th - radius * std::cos(th), -radius * std::sin(th)};
    loop.samples.push_back({at, std::hypot(c + radius * std::sin(th), radius * std::cos(th)) * step});
  }
  return loop;
}

// In how many loops the sample of this phase (0..1) exists; the last loop may be a part of one.
int times_laid(const Coil& coil, double phase) {
  const double whole = std::floor(coil.loops);
  return static_cast<int>(whole) + (phase < coil.loops - whole ? 1 : 0);
}

double loops_with_loops(const Coil& coil, const Loop& loop, double u) {
  const int m = static_cast<int>(loop.samples.size());
  const int furthest = static_cast<int>(std::ceil(coil.loops));
  const double reach = std::sqrt(kGone) / u;
  double sum = 0;
  for (int i = 0; i < m; ++i) {
    const auto& a = loop.samples[i];
    const int times_a = times_laid(coil, (i + 0.5) / m);
    for (int j = 0; j < m; ++j) {
      const auto& b = loop.samples[j];
      const double dy = a.at.y - b.at.y, dx = b.at.x - a.at.x;
      if (std::abs(dy) > reach) continue;
      const int times_b = times_laid(coil, (j + 0.5) / m);
      const int first = std::max(-furthest, static_cast<int>(std::ceil((-reach - dx) / coil.pitch)));
      const int last = std::min(furthest, static_cast<int>(std::floor((reach - dx) / coil.pitch)));
      for (int n = first; n <= last; ++n) {
        // loop l of a with loop l + n of b, for every l where both are laid
        const int from = std::max(0, -n), to = std::min(times_a, times_b - n);
        if (to <= from) continue;
        const double x = dx + n * coil.pitch, r2 = x * x + dy * dy;
        sum += (to - from) * a.ds * b.ds * std::exp(-u * u * r2);
      }
    }
  }
  return sum;
}

double loops_with_return(const Coil& coil, const Loop& loop, const Segment& back, double u) {
  const int m = static_cast<int>(loop.samples.size());
  double sum = 0;
  for (int i = 0; i < m; ++i) {
    const auto& a = loop.samples[i];
    for (int l = 0; l < times_laid(coil, (i + 0.5) / m); ++l)
      sum += a.ds * gaussian_point(a.at + Point{l * coil.pitch, 0}, back, u);
  }
  return sum;
}

Segment return_line(const Coil& coil, double offset) {
  return {{0, offset}, {coil.return_pipe, offset}};
}

int samples_for(const Coil& coil, double u) {
  const double loop = coil.loop_pipe / coil.loops;
  return std::max(24, static_cast<int>(std::ceil(loop * u / 0.4)));
}

double kernel_at(const Coil& coil, const Segment& back, double u) {
  double sum = gaussian_pair(back, back, u);
  if (coil.loops > 0) {
    const Loop loop = sampled_loop(coil, samples_for(coil, u));
    sum += loops_with_loops(coil, loop, u) + 2 * loops_with_return(coil, loop, back, u);
  }
  return sum;
}

// Above this the pipe sees itself as straight, plus what is local to bends and crossings: H u is a + b/u.
constexpr double kStraightFrom = 60;  // 1/m

}  // namespace

KernelTable coil_kernel(const Coil& coil, double return_offset) {
  const Segment back = return_line(coil, return_offset);
  const double pipe = coil.loop_pipe + coil.return_pipe;
  KernelTable table{};
  double last_local = 0;
  for (int i = 0; i < kKernelNodes; ++i) {
    const double u = kernel_node(i), straight = std::sqrt(pi) * pipe / u;
    if (u <= kStraightFrom) {
      table[i] = kernel_at(coil, back, u);
      last_local = (table[i] - straight) * u * u;
    } else {
      table[i] = straight + last_local / (u * u);
    }
  }
  return table;
}

KernelTable coil_kernel(const CoilInGround& coil) {
  KernelTable table = coil_kernel(coil.coil, coil.return_offset);
  const KernelTable bends = change_by_bends(coil);
  for (int i = 0; i < kKernelNodes; ++i) table[i] += bends[i];
  return table;
}

std::vector<Strand> coil_strands(const Coil& coil, double return_offset, int around) {
  std::vector<Strand> strands;
  if (coil.return_pipe > 0) strands.push_back({return_line(coil, return_offset), coil.return_pipe, false});
  if (coil.loops <= 0) return strands;
  const Loop loop = sampled_loop(coil, around);
  double whole = 0;
  for (const auto& s : loop.samples) whole += s.ds;
  const double advance = coil.loops * coil.pitch, c = coil.pitch / (2 * pi);
  for (int i = 0; i < around; ++i) {
    const auto& s = loop.samples[i];
    const double start = s.at.x - c * (i + 0.5) * 2 * pi / around;  // the curve's circle, without its advance
    strands.push_back({{{start, s.at.y}, {start + advance, s.at.y}}, coil.loop_pipe * s.ds / whole});
  }
  return strands;
}

}  // namespace underlawn
