// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/hit.h"

#include <algorithm>

#include "layout/given.h"
#include "layout/header_groups.h"
#include "plan/dimensions.h"
#include "plane/region.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

struct Candidate {
  Selected what;
  int rank;     // point, line, area, lot edge
  double size;  // areas: m2; others: distance
};

class Finder {
 public:
  Finder(Point at, double reach) : at_(at), reach_(reach) {}

  void point(Selected what, Point p) { offer(what, 0, distance(p, at_)); }
  void line(Selected what, const Polyline& points, int rank = 1) {
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
      if (offer(what, rank, distance(Segment{points[i], points[i + 1]}, at_))) return;
  }
  void area(Selected what, const Ring& ring) {
    if (distance(ring, at_) <= reach_) found_.push_back({what, 2, underlawn::area(ring)});
  }
  std::vector<Selected> result() {
    std::stable_sort(found_.begin(), found_.end(), [](const Candidate& a, const Candidate& b) {
      return a.rank != b.rank ? a.rank < b.rank : a.size < b.size;
    });
    std::vector<Selected> all;
    for (const Candidate& c : found_) all.push_back(c.what);
    return all;
  }

 private:
  bool offer(const Selected& what, int rank, double away) {
    if (!(away <= reach_)) return false;
    found_.push_back({what, rank, away});
    return true;
  }

  Point at_;
  double reach_;
  std::vector<Candidate> found_;
};

void find_feature_at(Finder& finder, const Feature& f) {
  const Selected what{Selected::Kind::feature, f.id};
  switch (shape_of(f.kind)) {
    case FeatureShape::point:
      if (!f.points.empty()) finder.point(what, f.points.front());
      break;
    case FeatureShape::line:
      finder.line(what, f.points);
      break;
    case FeatureShape::area:
      if (f.points.size() >= 3) finder.area(what, f.points);
      break;
  }
}

void find_locked_at(Finder& finder, const Wishes& wishes) {
  for (std::size_t i = 0; i < wishes.locked.size(); ++i) {
    const Polyline line = line_of(wishes.locked[i]);
    if (length(line) > kSamePlace)
      finder.area({Selected::Kind::locked, static_cast<int>(i)}, strip_along(line, wishes.trench_width));
  }
}

void find_dimensions_at(Finder& finder, const Plan& plan) {
  for (std::size_t i = 0; i < plan.dimensions.size(); ++i)
    if (const auto line = line_of(plan.dimensions[i]))
      finder.line({Selected::Kind::dimension, static_cast<int>(i)}, {line->a, line->b});
}

// Of one field all of it, of groups the group's own.
Selected header_of(const Layout& layout, std::size_t leg) {
  return {Selected::Kind::header, layout.groups.size() > 1 ? group_of_leg(layout, leg) : 0};
}

void find_derived_at(Finder& finder, const Layout& layout) {
  for (const Trench& t : layout.trenches)
    if (length_of(t) > kSamePlace) finder.area({Selected::Kind::trench, t.number}, floor_of(t));
  for (std::size_t i = 0; i < layout.header.legs.size(); ++i)
    finder.line(header_of(layout, i), layout.header.legs[i]);
  finder.line({Selected::Kind::run}, layout.run.line);
}

}  // namespace

std::vector<Selected> hits(const Plan& plan, const Outcome* outcome, Point at, double reach) {
  Finder finder(at, reach);
  if (plan.site.entry) finder.point({Selected::Kind::entry}, plan.site.entry->at);
  for (const Feature& f : plan.site.features) find_feature_at(finder, f);
  for (std::size_t i = 0; i < plan.site.heights.size(); ++i)
    finder.point({Selected::Kind::height, static_cast<int>(i)}, plan.site.heights[i].at);
  find_locked_at(finder, plan.wishes);
  find_dimensions_at(finder, plan);
  if (outcome) find_derived_at(finder, outcome->layout);
  const Ring lot = lot_ring(plan.site);
  for (std::size_t i = 0; i < lot.size(); ++i)
    finder.line({Selected::Kind::lot_edge, 0, static_cast<int>(i)}, {lot[i], lot[(i + 1) % lot.size()]}, 3);
  return finder.result();
}

std::vector<Selected> inside(const Plan& plan, const Box& box) {
  const auto in_box = [&](Point p) {
    return p.x >= box.low.x && p.x <= box.high.x && p.y >= box.low.y && p.y <= box.high.y;
  };
  std::vector<Selected> found;
  for (const Feature& f : plan.site.features)
    if (!f.points.empty() && std::all_of(f.points.begin(), f.points.end(), in_box))
      found.push_back({Selected::Kind::feature, f.id});
  for (std::size_t i = 0; i < plan.wishes.locked.size(); ++i) {
    const Polyline line = line_of(plan.wishes.locked[i]);
    if (std::all_of(line.begin(), line.end(), in_box))
      found.push_back({Selected::Kind::locked, static_cast<int>(i)});
  }
  for (std::size_t i = 0; i < plan.site.heights.size(); ++i)
    if (in_box(plan.site.heights[i].at)) found.push_back({Selected::Kind::height, static_cast<int>(i)});
  for (std::size_t i = 0; i < plan.dimensions.size(); ++i)
    if (in_box(plan.dimensions[i].from) && in_box(plan.dimensions[i].to))
      found.push_back({Selected::Kind::dimension, static_cast<int>(i)});
  if (plan.site.entry && in_box(plan.site.entry->at)) found.push_back({Selected::Kind::entry});
  return found;
}

bool is_shown(const Plan& plan, const Selected& what, const Layers& layers) {
  using Kind = Selected::Kind;
  switch (what.kind) {
    case Kind::feature: {
      const Feature* f = find_feature(plan.site, what.id);
      return f == nullptr || layers.shows(f->kind);
    }
    case Kind::entry:
      return layers.shows(FeatureKind::house);
    case Kind::dimension:
      return layers.dimensions;
    case Kind::locked:
    case Kind::trench:
    case Kind::header:
    case Kind::run:
      return layers.loop;
    case Kind::nothing:
    case Kind::lot:
    case Kind::lot_edge:
    case Kind::height:
      break;
  }
  return true;
}

}  // namespace underlawn
