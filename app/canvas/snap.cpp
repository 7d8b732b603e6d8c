// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/snap.h"

#include <QCoreApplication>
#include <limits>

#include "layout/given.h"
#include "plane/region.h"

namespace underlawn {

namespace {

// Edges shorter than this many reaches have no middle of their own: their ends would be hard to hit.
constexpr double kMiddleRoom = 3;
constexpr double kLineReach = 2.0 / 3;
// An edge is drawn out at most this many reaches beyond its end.
constexpr double kExtensionRoom = 25;

void add_ring(SnapTargets& t, const std::vector<Point>& points, bool closed, SnapKind kind, SnapOwner owner,
              bool leads) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    owner.index = static_cast<int>(i);
    t.places.push_back({points[i], kind, owner});
    if (i + 1 < points.size() || (closed && points.size() > 2))
      t.edges.push_back({{points[i], points[(i + 1) % points.size()]}, owner, leads});
  }
}

// The best so far; a candidate takes its place where its kind comes first, or is the same and nearer.
class Best {
 public:
  void offer(SnapKind kind, Point at, double away, double reach, std::optional<Segment> edge = {}) {
    if (!(away <= reach)) return;
    const int rank = level(kind);
    if (rank > rank_ || (rank == rank_ && away >= away_)) return;
    rank_ = rank;
    away_ = away;
    snap_ = {kind, at, edge};
  }
  std::optional<Snap> snap() const { return snap_; }

 private:
  static int level(SnapKind kind) {
    return kind == SnapKind::square ? static_cast<int>(SnapKind::parallel) : static_cast<int>(kind);
  }
  int rank_ = std::numeric_limits<int>::max();
  double away_ = 0;
  std::optional<Snap> snap_;
};

Point on_line(const Segment& line, Point p) {
  const Point along = line.b - line.a;
  return line.a + (dot(p - line.a, along) / dot(along, along)) * along;
}

void offer_edge(Best& best, const SnapQuery& q, const Segment& edge) {
  const Point middle = 0.5 * (edge.a + edge.b);
  if (distance(edge.a, edge.b) >= kMiddleRoom * q.reach)
    best.offer(SnapKind::middle, middle, distance(q.pointer, middle), q.reach, edge);
  const Point near = nearest_on(edge, q.pointer);
  best.offer(SnapKind::edge, near, distance(q.pointer, near), kLineReach * q.reach, edge);
  if (!q.from) return;
  const Point foot = on_line(edge, *q.from);
  const bool on_edge = distance(foot, nearest_on(edge, foot)) < kSamePlace;
  if (on_edge && distance(foot, *q.from) > kSamePlace)
    best.offer(SnapKind::foot, foot, distance(q.pointer, foot), q.reach, edge);
}

void offer_extension(Best& best, const SnapQuery& q, const Segment& edge) {
  const Point at = on_line(edge, q.pointer);
  const double beyond = distance(at, nearest_on(edge, at));
  if (beyond > kSamePlace && beyond < kExtensionRoom * q.reach)
    best.offer(SnapKind::extension, at, distance(q.pointer, at), kLineReach * q.reach, edge);
}

void offer_directions(Best& best, const SnapQuery& q, const Segment& edge) {
  if (distance(q.pointer, *q.from) < 2 * q.reach) return;
  const Point along = edge.b - edge.a;
  const Point beside = on_line({*q.from, *q.from + along}, q.pointer);
  best.offer(SnapKind::parallel, beside, distance(q.pointer, beside), kLineReach * q.reach, edge);
  const Point across = on_line({*q.from, *q.from + left_normal(along)}, q.pointer);
  best.offer(SnapKind::square, across, distance(q.pointer, across), kLineReach * q.reach, edge);
}

}  // namespace

QString snap_name(SnapKind kind) {
  switch (kind) {
    case SnapKind::end:
      return QObject::tr("End");
    case SnapKind::middle:
      return QObject::tr("Middle");
    case SnapKind::house_corner:
      return QObject::tr("House corner");
    case SnapKind::foot:
      return QObject::tr("Foot of perpendicular");
    case SnapKind::edge:
      return QObject::tr("On edge");
    case SnapKind::parallel:
      return QObject::tr("Parallel");
    case SnapKind::square:
      return QObject::tr("Square");
    case SnapKind::extension:
      return QObject::tr("Extension");
  }
  return {};
}

SnapTargets snap_targets(const Plan& plan) {
  SnapTargets t;
  add_ring(t, lot_ring(plan.site), true, SnapKind::end, {SnapOwner::Kind::lot}, true);
  for (const Feature& f : plan.site.features) {
    const bool house = f.kind == FeatureKind::house;
    add_ring(t, f.points, shape_of(f.kind) == FeatureShape::area,
             house ? SnapKind::house_corner : SnapKind::end, {SnapOwner::Kind::feature, f.id}, house);
  }
  for (std::size_t i = 0; i < plan.wishes.locked.size(); ++i)
    add_ring(t, line_of(plan.wishes.locked[i]), false, SnapKind::end,
             {SnapOwner::Kind::locked, static_cast<int>(i)}, true);
  return t;
}

void add_drawn(SnapTargets& t, const Polyline& drawn) {
  add_ring(t, drawn, false, SnapKind::end, {SnapOwner::Kind::drawn}, true);
}

void add_trenches(SnapTargets& t, const Outcome& outcome) {
  for (const Trench& trench : outcome.layout.trenches)
    add_ring(t, middle_line(trench), false, SnapKind::end, {SnapOwner::Kind::derived}, false);
}

std::optional<Snap> best_snap(const SnapQuery& q, const SnapTargets& targets) {
  Best best;
  for (const auto& place : targets.places)
    best.offer(place.kind, place.at, distance(q.pointer, place.at), q.reach);
  for (const auto& edge : targets.edges) {
    if (distance(edge.line.a, edge.line.b) < kSamePlace) continue;
    offer_edge(best, q, edge.line);
    if (!q.from) continue;
    offer_extension(best, q, edge.line);
    if (edge.leads) offer_directions(best, q, edge.line);
  }
  return best.snap();
}

}  // namespace underlawn
