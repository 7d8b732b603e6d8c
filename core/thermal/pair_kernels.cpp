// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/pair_kernels.h"

#include <algorithm>
#include <optional>

#include "base/in_parallel.h"
#include "plane/region.h"
#include "thermal/bent.h"
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
  Polyline legs(std::size_t i) const {
    Polyline out = {line(i).a};
    if (const CoilInGround* c = coil(i)) out.insert(out.end(), c->bends.begin(), c->bends.end());
    out.push_back(line(i).b);
    return out;
  }
  double weight(std::size_t i) const { return coil(i) ? 1 : pipes.pipes[i - pipes.coils.size()].weight; }
};

bool same_from_above(const Things& a, std::size_t i, const Things& b, std::size_t j) {
  const CoilInGround *c = a.coil(i), *d = b.coil(j);
  if (!c != !d || a.line(i) != b.line(j) || a.weight(i) != b.weight(j)) return false;
  return !c || (c->coil == d->coil && c->return_offset == d->return_offset && c->bends == d->bends);
}

std::vector<LaidStrand> placed(const Things& things, std::size_t i, int around) {
  const CoilInGround* c = things.coil(i);
  if (!c) return {{things.line(i), things.weight(i)}};
  return laid_strands(*c, around);
}

bool near_one_another(const Polyline& a, const Polyline& b) {
  for (std::size_t i = 1; i < a.size(); ++i)
    for (std::size_t j = 1; j < b.size(); ++j)
      if (distance(Segment{a[i - 1], a[i]}, Segment{b[j - 1], b[j]}) < kNear) return true;
  return false;
}

KernelTable kernel_between(const std::vector<LaidStrand>& a, const std::vector<LaidStrand>& b) {
  KernelTable sum{};
  for (const LaidStrand& p : a)
    for (const LaidStrand& q : b) {
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

struct Pair {
  std::size_t i, j, table;
};

}  // namespace

void PairKernels::update(const PipesInGround& pipes) {
  const Things now{pipes}, before{pipes_};
  const auto old = places_before(now, before);
  std::vector<std::vector<LaidStrand>> near, far;
  for (std::size_t i = 0; i < now.size(); ++i) {
    near.push_back(placed(now, i, kAroundNear));
    far.push_back(placed(now, i, kAroundFar));
  }
  std::vector<KernelTable> tables;
  std::vector<Pair> moved;
  for (std::size_t j = 1; j < now.size(); ++j)
    for (std::size_t i = 0; i < j; ++i) {
      const bool known = old[i] && old[j] && *old[i] < *old[j];  // in the same order, so to the same last bit
      if (!known) moved.push_back({i, j, tables.size()});
      tables.push_back(known ? of(*old[i], *old[j]) : KernelTable{});
    }
  in_parallel(moved.size(), [&](std::size_t k) {
    const auto [i, j, table] = moved[k];
    const bool close = near_one_another(now.legs(i), now.legs(j));
    tables[table] = close ? kernel_between(near[i], near[j]) : kernel_between(far[i], far[j]);
  });
  pipes_ = pipes;
  tables_ = std::move(tables);
}

}  // namespace underlawn
