// SPDX-License-Identifier: GPL-3.0-or-later
// The shortest way across the plane, round what blocks it, dearer over what may be crossed.
#pragma once

#include <limits>
#include <memory>
#include <optional>
#include <vector>

#include "plane/point.h"
#include "plane/region.h"

namespace underlawn {

class Sight;

// Ground that may be crossed at a price: each metre inside costs `per_metre` more, and each entry
// `per_entry`, both in metres of plain digging. Its boundary is outside: along an edge nothing is entered. A
// line that starts inside has not entered. Prices below 0 count as 0.
struct DearGround {
  Region region;
  double per_metre = 0;
  double per_entry = 0;
};

// An end that lies outside `free` by no more than this is taken to lie on its boundary. m
inline constexpr double kRouteSnap = 1e-3;

struct RouteRequest {
  Point from, to;  // both inside `free`, on its boundary or within kRouteSnap of it
  Region free;     // where the line may lie
  std::vector<DearGround> dear;
  double per_bend = 0;  // m of plain digging that a bend is worth avoiding
};

struct Route {
  Polyline line;      // from first, to last
  double length = 0;  // m on the ground
  double cost = 0;    // m of plain digging: length, bends and dear ground
};

// The cheapest line that bends only at corners: at those the free ground has toward obstacles and at those of
// dear ground that stick out. Without dear ground that is the shortest line there is; a price per metre could
// make a bend on the edge of dear ground, where no corner is, a little cheaper still. The line may slide
// along boundaries and reach past them by kSamePlace. Nothing when there is no way. The same request gives
// the same line.
std::optional<Route> shortest_route(const RouteRequest& request);

// A line that is rather crossed steeply: a leg that crosses it at an angle below `flat` costs `price` more,
// in metres of plain digging. A leg that only touches it does not cross. Prices below 0 count as 0.
struct DearLine {
  Segment at;
  double flat = 0;  // rad, 0..pi/2
  double price = 0;
};

// Dear ground and dear lines made ready once, for many routers.
class ReadyDear {
 public:
  ReadyDear() = default;
  explicit ReadyDear(const std::vector<DearGround>& grounds);
  void add(const DearGround& ground);
  void add(const DearLine& line);
  double cost(const Polyline& line, double per_bend) const;  // m of plain digging

 private:
  struct One;
  friend class Router;
  double flat_crossings(Point a, Point b) const;  // what a leg costs for them
  std::vector<std::shared_ptr<const One>> all_;   // in order
  std::vector<DearLine> lines_;
};

// The same for many pairs of ends on the same ground, which it prepares once and whose corners' sight of one
// another it remembers. Not for several threads at once.
class Router {
 public:
  Router(const Region& free, const std::vector<DearGround>& dear, double per_bend);
  Router(const Region& free, const ReadyDear& dear, double per_bend);
  ~Router();
  Router(Router&&) noexcept;
  // Nothing either where every way costs more than `at_most`.
  std::optional<Route> route(Point from, Point to, double at_most = std::numeric_limits<double>::infinity());
  // To that of the ends that is cheapest reached; those outside are left out.
  std::optional<Route> route_to_any(Point from, const std::vector<Point>& to);
  const Sight& free() const;
  double cost(const Polyline& line) const;  // m of plain digging, of any line

 private:
  struct Ground;
  std::unique_ptr<Ground> ground_;
};

}  // namespace underlawn
