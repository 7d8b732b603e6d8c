// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/off_page.h"

#include <QRectF>
#include <cmath>
#include <optional>

#include "base/say.h"
#include "plan/dimensions.h"
#include "site/clearances.h"

namespace underlawn::sheet {

namespace {

// What a thing covers, by the corners of it.
struct Thing {
  std::string name;
  std::vector<Point> points;
};

std::vector<Thing> dug(const Outcome& outcome) {
  std::vector<Thing> all;
  for (const Trench& t : outcome.layout.trenches)
    all.push_back({say("trench {}", std::to_string(t.number)), middle_line(t)});
  for (const Polyline& leg : outcome.layout.header.legs) all.push_back({say("header"), leg});
  all.push_back({say("supply run"), outcome.layout.run.line});
  for (const HouseCorner& corner : outcome.stake_out.corners)
    all.push_back({say("house corner {}", corner.tag), {corner.at}});
  return all;
}

std::vector<Thing> standing(const Plan& plan) {
  std::vector<Thing> all;
  const Ring lot = lot_ring(plan.site);
  for (std::size_t i = 0; i < lot.size(); ++i)
    all.push_back({say("lot edge {}", std::to_string(i + 1)), {lot[i], lot[(i + 1) % lot.size()]}});
  for (const Feature& f : plan.site.features) {
    Thing thing{display_name(f), f.points};
    const double zone = f.kind == FeatureKind::tree ? root_zone_radius(plan.site, f) : 0;
    if (zone > 0 && !f.points.empty()) {
      const Point p = f.points[0];
      thing.points = {p - Point{zone, zone}, p + Point{zone, zone}};
    }
    all.push_back(std::move(thing));
  }
  for (std::size_t i = 0; i < plan.dimensions.size(); ++i)
    if (const auto line = line_of(plan.dimensions[i]))
      all.push_back({say("dimension {}", std::to_string(i + 1)), {line->a, line->b}});
  return all;
}

std::optional<Box> box_of(const std::vector<Thing>& things) {
  std::optional<Box> box;
  for (const Thing& thing : things)
    for (Point p : thing.points) {
      if (!std::isfinite(p.x) || !std::isfinite(p.y)) continue;
      if (!box) box = Box{p, p};
      box->low = {std::min(box->low.x, p.x), std::min(box->low.y, p.y)};
      box->high = {std::max(box->high.x, p.x), std::max(box->high.y, p.y)};
    }
  return box;
}

}  // namespace

Box drawn_box(const Plan& plan, const Outcome& outcome) {
  std::vector<Thing> all = dug(outcome);
  for (Thing& thing : standing(plan)) all.push_back(std::move(thing));
  return box_of(all).value_or(Box{{0, 0}, {10, 10}});
}

std::optional<Box> dig_box(const Plan&, const Outcome& outcome) {
  return box_of(dug(outcome));
}

std::vector<std::string> off_page(const Plan& plan, const Outcome& outcome, const View& view) {
  std::vector<Thing> all = dug(outcome);
  for (Thing& thing : standing(plan)) all.push_back(std::move(thing));
  const QRectF room = QRectF(QPointF(0, 0), view.size).adjusted(-0.5, -0.5, 0.5, 0.5);
  std::vector<std::string> names;
  for (const Thing& thing : all)
    for (Point p : thing.points) {
      if (std::isfinite(p.x) && std::isfinite(p.y) && room.contains(view.to_device(p))) continue;
      if (names.empty() || names.back() != thing.name) names.push_back(thing.name);
      break;
    }
  return names;
}

}  // namespace underlawn::sheet
