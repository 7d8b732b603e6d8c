// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <boost/geometry/index/rtree.hpp>
#include <cmath>
#include <cstdio>
#include <optional>

#include "base/say.h"
#include "plane/boost_types.h"
#include "plane/clip.h"

namespace underlawn {
namespace {

namespace cl = ClipperLib;
namespace bgi = boost::geometry::index;

std::string place(Point p) {
  char text[80];
  std::snprintf(text, sizeof text, "x %.2f m, y %.2f m", p.x, p.y);
  return text;
}

std::optional<Trouble> trouble_of_points(const Ring& drawn, const std::string& thing) {
  if (drawn.size() > static_cast<std::size_t>(kMostRingPoints))
    return Trouble{"ring_too_many_points", thing, say("drawn with {} corners", std::to_string(drawn.size())),
                   say("drawn with at most {} corners", std::to_string(kMostRingPoints)),
                   say("Leave out corners that lie close together.")};
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    const Point p = drawn[i];
    const std::string corner = say("corner {}", std::to_string(i + 1));
    if (!std::isfinite(p.x) || !std::isfinite(p.y))
      return Trouble{"ring_not_finite", thing, say("drawn with {} whose place is not a number", corner),
                     say("drawn with numbers for x and y"), say("Move or delete that corner.")};
    if (std::abs(p.x) > kLargestPlan || std::abs(p.y) > kLargestPlan)
      return Trouble{"ring_out_of_reach", thing, say("drawn with {} at {}", corner, place(p)),
                     say("within {} m of the origin", std::to_string(static_cast<int>(kLargestPlan))),
                     say("Move or delete that corner.")};
  }
  return std::nullopt;
}

Ring without_repeats(const Ring& drawn) {
  Ring ring;
  for (Point p : drawn)
    if (ring.empty() || distance(ring.back(), p) > kSamePlace) ring.push_back(p);
  while (ring.size() > 1 && distance(ring.front(), ring.back()) <= kSamePlace) ring.pop_back();
  return ring;
}

std::size_t distinct_points(Ring ring) {
  const auto before = [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; };
  std::sort(ring.begin(), ring.end(), before);
  return static_cast<std::size_t>(std::unique(ring.begin(), ring.end()) - ring.begin());
}

// b on the straight way from a to c, to what a double can tell.
bool straight_on(Point a, Point b, Point c) {
  constexpr double kLevel = 1e-9;  // m
  return dot(b - a, c - b) > 0 && distance(Segment{a, c}, b) <= kLevel;
}

Ring without_collinear(const Ring& ring) {
  Ring out;
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point before = out.empty() ? ring[n - 1] : out.back();
    if (!straight_on(before, ring[i], ring[(i + 1) % n])) out.push_back(ring[i]);
  }
  return out;
}

double side(const Segment& line, Point p) {
  const Point along = line.b - line.a;
  return cross(along, p - line.a) / norm(along);
}

// Where two edges pass clean through each other, by more than kSamePlace on every side.
std::optional<Point> crossing(const Segment& s, const Segment& t) {
  const auto apart = [](double l, double r) {
    return std::min(std::abs(l), std::abs(r)) > kSamePlace && l * r < 0;
  };
  const double ta = side(s, t.a), tb = side(s, t.b);
  if (!apart(ta, tb) || !apart(side(t, s.a), side(t, s.b))) return std::nullopt;
  return t.a + ta / (ta - tb) * (t.b - t.a);
}

struct Meetings {
  std::optional<Point> crossing;
  bool touches = false;  // two sides that are not neighbours come together
};

Meetings meetings_of(const Ring& ring) {
  using Entry = std::pair<Box, std::size_t>;
  std::vector<Entry> boxes;
  const std::size_t n = ring.size();
  const auto edge = [&](std::size_t i) { return Segment{ring[i], ring[(i + 1) % n]}; };
  const auto grown_box = [](const Segment& s) {
    const Point reach{kSamePlace, kSamePlace};
    const Box box = bounds(Ring{s.a, s.b});
    return Box{box.low - reach, box.high + reach};
  };
  for (std::size_t i = 0; i < n; ++i) boxes.push_back({grown_box(edge(i)), i});
  const bgi::rtree<Entry, bgi::rstar<16>> index(boxes);
  std::vector<Entry> near;
  Meetings found;
  for (std::size_t i = 0; i < n; ++i) {
    near.clear();
    index.query(bgi::intersects(boxes[i].first), std::back_inserter(near));
    std::sort(near.begin(), near.end(), [](const Entry& a, const Entry& b) { return a.second < b.second; });
    for (const auto& [box, j] : near) {
      if (j <= i + 1 || (i == 0 && j == n - 1)) continue;
      if ((found.crossing = crossing(edge(i), edge(j)))) return found;
      found.touches = found.touches || distance(edge(i), edge(j)) <= 2 * kSamePlace;
    }
  }
  return found;
}

cl::Paths filled(const cl::Path& path, cl::PolyFillType fill) {
  cl::Clipper clipper;
  cl::Paths out;
  if (clipper.AddPath(path, cl::ptSubject, true)) clipper.Execute(cl::ctUnion, out, fill, fill);
  return out;
}

// A loop worth the name is wider, on the mean, than kSamePlace; what is less comes of corners that touch.
std::optional<Point> first_loop(const cl::Paths& loops) {
  for (const cl::Path& loop : loops) {
    Ring ring;
    for (const auto& p : loop)
      ring.push_back({static_cast<double>(p.X) * kGrid, static_cast<double>(p.Y) * kGrid});
    if (area(ring) > kSamePlace * perimeter(ring) / 2) return ring.front();
  }
  return std::nullopt;
}

// A ring that crosses itself in a corner has no two edges that do. It still winds twice round some ground, or
// the other way round it.
std::optional<Point> crossing_in_a_corner(const Ring& ring) {
  cl::Path path = path_of(ring);
  if (!cl::Orientation(path)) cl::ReversePath(path);
  if (const auto at = first_loop(filled(path, cl::pftNegative))) return at;
  cl::Clipper twice;
  if (!twice.AddPaths(filled(path, cl::pftNonZero), cl::ptSubject, true)) return std::nullopt;
  twice.AddPaths(filled(path, cl::pftEvenOdd), cl::ptClip, true);
  cl::Paths loops;
  twice.Execute(cl::ctDifference, loops, cl::pftNonZero, cl::pftNonZero);
  if (const auto at = first_loop(loops)) return at;
  double once = 0;
  for (const cl::Path& p : filled(path, cl::pftNonZero)) once += cl::Area(p);
  const double more = (cl::Area(path) - once) * kGrid * kGrid;  // wound three times
  if (more > kSamePlace * perimeter(ring)) return ring.front();
  return std::nullopt;
}

std::optional<Point> self_crossing(const Ring& ring) {
  const Meetings found = meetings_of(ring);
  return found.crossing || !found.touches ? found.crossing : crossing_in_a_corner(ring);
}

}  // namespace

Result<Ring> checked_ring(const Ring& drawn, std::string_view name) {
  const std::string thing(name);
  if (drawn.empty())
    return refuse({"ring_too_few_points", thing, say_as("an outline", "not drawn"),
                   say("an outline of at least 3 corners"), say("Draw it corner by corner.")});
  if (auto trouble = trouble_of_points(drawn, thing)) return refuse(*trouble);
  const Ring distinct = without_repeats(drawn);
  if (const std::size_t n = distinct_points(distinct); n < 3)
    return refuse({"ring_too_few_points", thing,
                   n == 1 ? say("drawn with 1 corner") : say("drawn with {} different corners", n),
                   say("drawn with at least 3 different corners"), say("Draw more corners or delete it.")});
  Ring ring = without_collinear(distinct);
  if (ring.size() > 3)
    if (const auto at = self_crossing(ring))
      return refuse({"ring_crosses_itself", thing, say("crossing itself at {}", place(*at)),
                     say("an outline that may touch but not cross itself"),
                     say("Move the corners near there.")});
  if (ring.size() < 3 || area(ring) <= kGrid * perimeter(ring))
    return refuse({"ring_no_area", thing, say("drawn with all corners in one line"),
                   say("an outline round some area"), say("Move a corner or delete it.")});
  if (boost::geometry::area(ring) < 0) std::reverse(ring.begin(), ring.end());
  return ring;
}

}  // namespace underlawn
