// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/locked_in_place.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

constexpr double kSame = 1e-6;  // m

bool same_line(const Polyline& a, const Polyline& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (!(distance(a[i], b[i]) < kSame)) return false;
  return true;
}

bool lies_at(const Trench& t, const Trench& locked) {
  return t.role == TrenchRole::field && !t.locked && same_line(middle_line(t), middle_line(locked)) &&
         std::abs(t.depth - locked.depth) < kSame &&
         std::abs(t.coil.coil_length - locked.coil.coil_length) < kSame;
}

}  // namespace

std::vector<Segment> kept_with_locked(const Wishes& w) {
  std::vector<Segment> kept = w.kept;
  if (kept.empty()) return kept;
  for (const GivenTrench& t : w.locked) {
    const bool known = std::any_of(w.kept.begin(), w.kept.end(), [&t](const Segment& k) {
      return distance(k.a, t.head) < kSame && distance(k.b, t.end) < kSame;
    });
    if (!known) kept.push_back({t.head, t.end});
  }
  return kept;
}

bool may_be_searched(const Trench& t, const Wishes& w, const Coil& coil) {
  const bool as_long = w.aim == Aim::metres || std::abs(length_of(t) - coil.trench_length) < kSame;
  const bool as_much = w.aim == Aim::metres || std::abs(t.coil.coil_length - coil.coil_length) < kSame;
  const Point u = unit(t.end - t.head);
  const bool along = !w.direction || std::abs(cross(u, direction(*w.direction))) < kSame;
  return t.bends.empty() && std::abs(t.depth - w.trench_depth) < kSame && as_long && as_much && along;
}

bool lock_in_place(std::vector<Trench>& trenches, const std::vector<Trench>& locked) {
  std::vector<Trench> marked = trenches;
  for (const Trench& held : locked) {
    const auto at =
        std::find_if(marked.begin(), marked.end(), [&](const Trench& t) { return lies_at(t, held); });
    if (at == marked.end()) return false;
    at->head = held.head;
    at->end = held.end;
    at->bends = held.bends;
    at->locked = true;
  }
  trenches = std::move(marked);
  return true;
}

}  // namespace underlawn
