// SPDX-License-Identifier: GPL-3.0-or-later
// Boolean operations and offsets, on the integers of the clipper's grid.
#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>
#include <polyclipping/clipper.hpp>

#include "plane/region.h"

namespace underlawn {
namespace {

namespace cl = ClipperLib;
using cl::Path;
using cl::Paths;

// Within this the clipper multiplies in 64 bits; twice the largest plan leaves room for offsets.
static_assert(2 * kLargestPlan / kGrid < 4.6e18);

cl::IntPoint on_grid(Point p) {
  assert(std::abs(p.x) < 2 * kLargestPlan && std::abs(p.y) < 2 * kLargestPlan);
  return {static_cast<cl::cInt>(std::llround(p.x / kGrid)), static_cast<cl::cInt>(std::llround(p.y / kGrid))};
}

Path path_of(const Polyline& points) {
  Path out;
  out.reserve(points.size());
  for (Point p : points) out.push_back(on_grid(p));
  return out;
}

Path turned(Path path, bool counter_clockwise) {
  if (cl::Orientation(path) != counter_clockwise) cl::ReversePath(path);
  return path;
}

Paths paths_of(const Region& r) {
  Paths out;
  for (const Polygon& p : r) {
    out.push_back(turned(path_of(p.outer), true));
    for (const Ring& hole : p.holes) out.push_back(turned(path_of(hole), false));
  }
  return out;
}

Ring ring_of(const Path& path) {
  Ring out;
  out.reserve(path.size());
  for (const cl::IntPoint& p : path) out.push_back({p.X * kGrid, p.Y * kGrid});
  return out;
}

void collect(const cl::PolyNode& node, Region& out) {
  for (const cl::PolyNode* outer : node.Childs) {
    Polygon polygon{ring_of(outer->Contour), {}};
    for (const cl::PolyNode* hole : outer->Childs) polygon.holes.push_back(ring_of(hole->Contour));
    out.push_back(std::move(polygon));
    for (const cl::PolyNode* hole : outer->Childs) collect(*hole, out);
  }
}

Region region_from(const cl::PolyTree& tree) {
  Region out;
  collect(tree, out);
  return out;
}

Region run(cl::ClipType type, const Paths& subject, const Paths& clip) {
  cl::Clipper clipper(cl::ioStrictlySimple);
  clipper.AddPaths(subject, cl::ptSubject, true);
  clipper.AddPaths(clip, cl::ptClip, true);
  cl::PolyTree tree;
  clipper.Execute(type, tree, cl::pftNonZero, cl::pftNonZero);
  return region_from(tree);
}

constexpr double kExcess = 0.01;  // of the offset: how far its curves may stand out

// Round corners are chords of a circle; its radius is made larger by as much as a chord cuts off, so that no
// place within `by` is ever left out: circumscribed, never inscribed.
Region offset(const Paths& paths, cl::EndType ends, double by) {
  const double sagitta = kExcess / 2;  // of the radius; the clipper's steps are a little finer than asked
  const double reach = std::abs(by) / (1 - sagitta) + 2 * kGrid;
  // The clipper rounds the number of steps, so its last chord may be half as long again, its sagitta 2.25
  // times.
  cl::ClipperOffset offset(2, std::max(sagitta / 2.25 * reach / kGrid, 0.25));
  offset.AddPaths(paths, cl::jtRound, ends);
  cl::PolyTree tree;
  offset.Execute(tree, std::copysign(reach, by) / kGrid);
  return region_from(tree);
}

}  // namespace

Region region_of(const Ring& ring) {
  return run(cl::ctUnion, {turned(path_of(ring), true)}, {});
}

Region unite(const std::vector<Region>& parts) {
  Paths all;
  for (const Region& r : parts)
    for (Path& p : paths_of(r)) all.push_back(std::move(p));
  return run(cl::ctUnion, all, {});
}

Region subtract(const Region& from, const Region& what) {
  return run(cl::ctDifference, paths_of(from), paths_of(what));
}
Region intersect(const Region& a, const Region& b) {
  return run(cl::ctIntersection, paths_of(a), paths_of(b));
}

Region grown(const Region& r, double by) {
  return by == 0 || r.empty() ? r : offset(paths_of(r), cl::etClosedPolygon, by);
}

Region buffered(const Polyline& line, double by) {
  return by > 0 && !line.empty() ? offset({path_of(line)}, cl::etOpenRound, by) : Region{};
}

// Circumscribed: the middle of every side touches the circle, the corners stand out by half a percent.
Region buffered(Point centre, double by) {
  if (!(by > 0)) return {};
  constexpr int kSides = 32;
  const double step = 2 * std::numbers::pi / kSides, reach = by / std::cos(step / 2) + 2 * kGrid;
  Ring ring;
  for (int i = 0; i < kSides; ++i) ring.push_back(centre + reach * direction(i * step));
  return region_of(ring);
}

}  // namespace underlawn
