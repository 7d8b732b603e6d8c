// SPDX-License-Identifier: GPL-3.0-or-later
// Offsets as unions of pieces that each lie on the true offset or a little outside it: along every edge a
// strip as wide as the offset, round every corner that sticks out a fan whose sides touch the true arc.
// Straight sides are exact and only arcs are too large, by at most 1 / cos(half a turn) - 1.
//
//      P____________Q      a, b   corners, the region below the line
//      /            \      P, Q   on the line exactly `by` away
//     /              F     F      fan round b: its sides touch the arc round b
//    a________________b
#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "base/say.h"
#include "plane/clip.h"

namespace underlawn {
namespace {

namespace cl = ClipperLib;

// 24 sides to a full turn. Half a degree more is let pass, so that what was rounded once and went to the grid
// is not rounded again: 1 / cos(7.75 deg) - 1 = 0.92 %.
constexpr double kTurn = 15.5 * std::numbers::pi / 180;

Point right_of(Point direction) {
  return {direction.y, -direction.x};
}

// Corners go to the nearest step of the grid, those of the ring and those of the offset: with two steps more
// than asked no side comes nearer than asked.
constexpr double kRounding = 2 * kGrid;

// Corners of the arc's hull round `centre`, from the normal `first`, counter-clockwise by `turn`.
void append_arc(Point centre, Point first, double turn, double by, Ring& out) {
  const int sides = std::max(1, static_cast<int>(std::ceil(turn / kTurn)));
  const double step = turn / sides, reach = by / std::cos(step / 2);
  for (int i = 0; i < sides; ++i) out.push_back(centre + reach * rotated(first, (i + 0.5) * step));
}

// Counter-clockwise turn from u to v where the corner sticks out (0, pi], else 0. Going straight back is half
// a turn.
double turn_out(Point u, Point v) {
  const double s = cross(u, v), c = dot(u, v);
  if (c < 0 && std::abs(s) < 1e-9) return std::numbers::pi;
  return s > 0 ? std::atan2(s, c) : 0;
}

Ring without_repeats(const Ring& ring) {
  Ring out;
  for (Point p : ring)
    if (out.empty() || distance(out.back(), p) > kGrid) out.push_back(p);
  while (out.size() > 1 && distance(out.front(), out.back()) <= kGrid) out.pop_back();
  return out;
}

// Counter-clockwise, so that pieces add up; rounding to the grid can turn the smallest round.
void add_piece(const Ring& piece, cl::Paths& out) {
  out.push_back(path_of(piece));
  if (!cl::Orientation(out.back())) cl::ReversePath(out.back());
}

// Strips and fans on the right-hand side of a closed ring.
void append_pieces(const Ring& drawn, double by, cl::Paths& out) {
  const Ring ring = without_repeats(drawn);
  const std::size_t n = ring.size();
  if (n < 2) return;
  std::vector<Point> along(n);
  std::vector<Ring> arcs(n);
  for (std::size_t i = 0; i < n; ++i) along[i] = unit(ring[(i + 1) % n] - ring[i]);
  for (std::size_t i = 0; i < n; ++i) {
    const Point u = along[(i + n - 1) % n];
    if (const double turn = turn_out(u, along[i]); turn > 0)
      append_arc(ring[i], right_of(u), turn, by, arcs[i]);
  }
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t j = (i + 1) % n;
    const Point aside = by * right_of(along[i]);
    const Point p = arcs[i].empty() ? ring[i] + aside : arcs[i].back();
    const Point q = arcs[j].empty() ? ring[j] + aside : arcs[j].front();
    add_piece({ring[i], p, q, ring[j]}, out);
  }
  for (std::size_t i = 0; i < n; ++i) {
    if (arcs[i].size() < 2) continue;
    arcs[i].push_back(ring[i]);
    add_piece(arcs[i], out);
  }
}

void append_region_pieces(const Region& r, bool outside, double by, cl::Paths& out) {
  const auto add = [&](const Ring& ring) {
    append_pieces(outside ? ring : Ring(ring.rbegin(), ring.rend()), by, out);
  };
  for (const Polygon& p : r) {
    add(p.outer);
    for (const Ring& hole : p.holes) add(hole);
  }
}

// More than the width of the largest plan covers all of it.
double within_reach(double by) {
  if (std::isnan(by)) throw std::invalid_argument(say("an offset that is not a number"));
  return std::clamp(by, -4 * kLargestPlan, 4 * kLargestPlan);
}

}  // namespace

Region grown(const Region& r, double by) {
  by = within_reach(by);
  if (by == 0) return r;
  cl::Paths pieces;
  append_region_pieces(r, by > 0, std::abs(by) + kRounding, pieces);
  if (by < 0) return clip(cl::ctDifference, paths_of(r), pieces);
  append_paths(r, pieces);
  return clip(cl::ctUnion, pieces, {});
}

Region buffered(const Polyline& line, double by) {
  if (line.empty() || by <= 0) return {};
  by = within_reach(by) + kRounding;
  // There and back again is a ring of no area.
  Ring ring = line;
  for (std::size_t i = line.size(); i-- > 2;) ring.push_back(line[i - 1]);
  cl::Paths pieces;
  append_pieces(ring, by, pieces);
  return pieces.empty() ? buffered(line.front(), by) : clip(cl::ctUnion, pieces, {});
}

Region buffered(Point centre, double by) {
  if (by <= 0) return {};
  by = within_reach(by) + kRounding;
  Ring disc;
  append_arc(centre, {1, 0}, 2 * std::numbers::pi, by, disc);
  return clip(cl::ctUnion, {path_of(disc)}, {});
}

}  // namespace underlawn
