// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/clip.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include "base/say.h"
#include "plane/subtract_all.h"

namespace underlawn {
namespace {

namespace cl = ClipperLib;

cl::cInt on_grid(double v) {
  if (!(std::abs(v) <= kClipReach))
    throw std::invalid_argument(say("a coordinate of {} m is beyond the {} m that can be clipped",
                                    std::to_string(v), std::to_string(static_cast<int>(kClipReach))));
  return static_cast<cl::cInt>(std::llround(v / kGrid));
}

void append_path(const Ring& ring, bool counter_clockwise, cl::Paths& out) {
  cl::Path path = path_of(ring);
  if (path.size() < 3) return;
  if (cl::Orientation(path) != counter_clockwise) cl::ReversePath(path);
  out.push_back(std::move(path));
}

// 1e5 and not 1e-5: the quotient is the double nearest to the decimal figure, the product is not.
constexpr double kStepsPerMetre = 1e5;
static_assert(kGrid == 1 / kStepsPerMetre);

Ring ring_of(const cl::Path& path) {
  Ring ring;
  ring.reserve(path.size());
  for (const cl::IntPoint& p : path)
    ring.push_back({static_cast<double>(p.X) / kStepsPerMetre, static_cast<double>(p.Y) / kStepsPerMetre});
  return ring;
}

// Thinner, on the mean, than two steps: nothing but the rounding of crossings.
bool is_sliver(const cl::Path& path) {
  double around = 0;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const cl::IntPoint &a = path[i], &b = path[(i + 1) % path.size()];
    around += std::hypot(static_cast<double>(b.X - a.X), static_cast<double>(b.Y - a.Y));
  }
  return std::abs(cl::Area(path)) <= around;
}

// Whether a hole lies in an outer path. They do not cross, so the first corner off the outer's line tells.
bool lies_in(const cl::Path& hole, const cl::Path& outer) {
  for (const cl::IntPoint& p : hole)
    if (const int where = cl::PointInPolygon(p, outer); where >= 0) return where > 0;
  return true;
}

struct Outer {
  const cl::Path* path;
  double size;  // steps squared
};

// Each hole goes to the smallest outer round it. Not taken from the clipper's own tree, whose nesting is not
// reliable where rings touch.
Region nested(const std::vector<Outer>& outers, const std::vector<const cl::Path*>& holes) {
  Region region(outers.size());
  for (std::size_t i = 0; i < outers.size(); ++i) region[i].outer = ring_of(*outers[i].path);
  for (const cl::Path* hole : holes) {
    const double size = std::abs(cl::Area(*hole));
    int home = -1;
    for (std::size_t i = 0; i < outers.size(); ++i) {
      if (outers[i].size < size || (home >= 0 && outers[i].size >= outers[home].size)) continue;
      if (outers.size() == 1 || lies_in(*hole, *outers[i].path)) home = static_cast<int>(i);
    }
    if (home >= 0) region[home].holes.push_back(ring_of(*hole));
  }
  return region;
}

}  // namespace

cl::Path path_of(const Ring& ring) {
  cl::Path path;
  path.reserve(ring.size());
  for (Point p : ring) path.push_back({on_grid(p.x), on_grid(p.y)});
  return path;
}

void append_paths(const Region& r, cl::Paths& out) {
  for (const Polygon& p : r) {
    append_path(p.outer, true, out);
    for (const Ring& hole : p.holes) append_path(hole, false, out);
  }
}

cl::Paths paths_of(const Region& r) {
  cl::Paths paths;
  append_paths(r, paths);
  return paths;
}

Region clip(cl::ClipType type, const cl::Paths& subject, const cl::Paths& other) {
  cl::Clipper clipper;
  // Of paths without area it takes none, and it counts having none as a failure.
  const bool some = clipper.AddPaths(subject, cl::ptSubject, true);
  if (!some) return {};
  if (!other.empty()) clipper.AddPaths(other, cl::ptClip, true);
  cl::Paths paths;
  if (!clipper.Execute(type, paths, cl::pftNonZero, cl::pftNonZero))
    throw std::runtime_error(say("the clipper gave up"));
  std::vector<Outer> outers;
  std::vector<const cl::Path*> holes;
  for (const cl::Path& path : paths) {
    const double size = cl::Area(path);
    const bool may_go = size > 0 ? type != cl::ctUnion : type == cl::ctUnion;
    if (size == 0 || (may_go && is_sliver(path))) continue;
    if (size > 0)
      outers.push_back({&path, size});
    else
      holes.push_back(&path);
  }
  return nested(outers, holes);
}

Region region_of(const Ring& ring) {
  cl::Paths paths;
  append_path(ring, true, paths);
  return clip(cl::ctUnion, paths, {});
}

Region unite(const std::vector<Region>& parts) {
  cl::Paths all;
  for (const Region& r : parts) append_paths(r, all);
  return clip(cl::ctUnion, all, {});
}

Region subtract(const Region& from, const Region& what) {
  return clip(cl::ctDifference, paths_of(from), paths_of(what));
}

Region subtract_all(const Region& from, const std::vector<Region>& parts) {
  cl::Paths all;
  for (const Region& r : parts) append_paths(r, all);
  return clip(cl::ctDifference, paths_of(from), all);
}

Region intersect(const Region& a, const Region& b) {
  return clip(cl::ctIntersection, paths_of(a), paths_of(b));
}

}  // namespace underlawn
