// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/pair_kernels.h"

#include <algorithm>
#include <optional>

#include "plane/region.h"
#include "thermal/coil_kernel.h"
#include "thermal/line_kernel.h"

namespace underlawn {
namespace {

// Nearer than this a coil is six strands and its return, farther four: the next term of the ring's expansion,
// (D/2 over distance)^4, is below a thousandth there.
constexpr double kNear = 3;  // m
constexpr int kAroundNear = 6, kAroundFar = 4;

// Coils before pipes, as one row of things.
struct Things {
  const PipesInGround& pipes;
  std::size_t size() const { return pipes.coils.size() + pipes.pipes.size(); }
  const CoilInGround* coil(std::size_t i) const { return i < pipes.coils.size() ? &pipes.coils[i] : nullptr; }
  Segment line(std::size_t i) const {
    const CoilInGround* c = coil(i);
    return c ? Segment{c->head, c->end} : pipes.pipes[i - pipes.coils.size()].line;
  }
  double weight(std::size_t i) const { return coil(i) ? 1 : pipes.pipes[i - pipes.coils.size()].weight; }
};

bool same_from_above(const Things& a, std::size_t i, const Things& b, std::size_t j) {
  const CoilInGround *c = a.coil(i), *d = b.coil(j);
  if (!c != !d || a.line(i) != b.line(j) || a.weight(i) != b.weight(j)) return false;
  return !c || (c->coil == d->coil && c->return_offset == d->return_offset);
}

// Straight strands on the lot, with metres of pipe per metre of line.
struct Placed {
  Segment line;
  double weight;
};

std::vector<Placed> placed(const Things& things, std::size_t i, int around) {
  const CoilInGround* c = things.coil(i);
  if (!c) return {{things.line(i), things.weight(i)}};
  const Point x = unit(c->end - c->head), y = left_normal(x);
  const auto on_lot = [&](Point p) { return c->head + p.x * x + p.y * y; };
  std::vector<Placed> out;
  for (const Strand& s : coil_strands(c->coil, c->return_offset, around))
    if (const double length = distance(s.line.a, s.line.b); length > 0)
      out.push_back({{on_lot(s.line.a), on_lot(s.line.b)}, s.pipe / length});
  return out;
}

KernelTable kernel_between(const std::vector<Placed>& a, const std::vector<Placed>& b) {
  KernelTable sum{};
  for (const Placed& p : a)
    for (const Placed& q : b) {
      const SegmentPair pair(p.line, q.line);
      for (int n = 0; n < kKernelNodes; ++n) {
        const double u = kernel_node(n);
        if (u * u * pair.apart() * pair.apart() > kGone) break;
        sum[n] += p.weight * q.weight * pair.at(u);
      }
    }
  return sum;
}

// Where each thing of `now` lay in `before`, if it did.
std::vector<std::optional<std::size_t>> places_before(const Things& now, const Things& before) {
  std::vector<std::optional<std::size_t>> out(now.size());
  for (std::size_t i = 0; i < now.size(); ++i)
    for (std::size_t j = 0; j < before.size() && !out[i]; ++j)
      if (same_from_above(now, i, before, j)) out[i] = j;
  return out;
}

}  // namespace

void PairKernels::update(const PipesInGround& pipes) {
  const Things now{pipes}, before{pipes_};
  const auto old = places_before(now, before);
  std::vector<std::vector<Placed>> near, far;
  for (std::size_t i = 0; i < now.size(); ++i) {
    near.push_back(placed(now, i, kAroundNear));
    far.push_back(placed(now, i, kAroundFar));
  }
  std::vector<KernelTable> tables;
  for (std::size_t j = 1; j < now.size(); ++j)
    for (std::size_t i = 0; i < j; ++i) {
      if (old[i] && old[j] && *old[i] < *old[j]) {  // in the same order, so to the same last bit
        tables.push_back(of(*old[i], *old[j]));
        continue;
      }
      const bool close = distance(now.line(i), now.line(j)) < kNear;
      tables.push_back(close ? kernel_between(near[i], near[j]) : kernel_between(far[i], far[j]));
    }
  pipes_ = pipes;
  tables_ = std::move(tables);
}

}  // namespace underlawn
