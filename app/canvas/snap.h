// SPDX-License-Identifier: GPL-3.0-or-later
// What the pointer catches: of everything within reach the kind that comes first below, and of that the
// nearest. One at a time, so that what the mark names is what a click takes.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"
#include "plane/point.h"

namespace underlawn {

enum class SnapKind { end, middle, house_corner, foot, edge, parallel, square, extension };
QString snap_name(SnapKind kind);

struct Snap {
  SnapKind kind = SnapKind::end;
  Point at;
  std::optional<Segment> edge;  // the edge it speaks of
};

// Whose point or edge it is, so that what is being moved does not catch itself.
struct SnapOwner {
  enum class Kind { lot, feature, locked, drawn, derived } kind = Kind::lot;
  int feature_id = 0;
  int index = 0;
};

struct SnapTargets {
  struct Place {
    Point at;
    SnapKind kind;  // end or house_corner
    SnapOwner owner;
  };
  struct Edge {
    Segment line;
    SnapOwner owner;
    bool leads = true;  // later lines may run parallel or square to it
  };
  std::vector<Place> places;
  std::vector<Edge> edges;
};

SnapTargets snap_targets(const Plan& plan);
void add_drawn(SnapTargets& targets, const Polyline& drawn);      // of the gesture in hand
void add_trenches(SnapTargets& targets, const Outcome& outcome);  // for measuring

struct SnapQuery {
  Point pointer;
  std::optional<Point> from;  // the last point of the line being drawn
  double reach = 0.3;         // m, of points; lines catch at two thirds of it
};

std::optional<Snap> best_snap(const SnapQuery& query, const SnapTargets& targets);

}  // namespace underlawn
