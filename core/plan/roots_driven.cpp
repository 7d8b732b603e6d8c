// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/roots_driven.h"

#include "dig/machine_ways.h"
#include "plane/region.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr double kSpeck = 0.5;  // m2, as of heaps on roots

struct Track {
  const Polyline* line;
  double half;  // m
};

std::vector<Track> tracks_of_machine(const Plan& plan, const DigOrder& order) {
  const double half = plan.dig.excavator.width / 2;
  std::vector<Track> all{{&order.way_out, half}};
  for (const DigStep& step : order.steps) {
    all.push_back({&step.way, half});
    all.push_back({&step.line, half});
  }
  return all;
}

std::vector<Track> tracks_of_trucks(const DigOrder& order) {
  std::vector<Track> all;
  for (const DigStep& step : order.steps) {
    all.push_back({&step.truck_way, kTruckWidth / 2});
    all.push_back({&step.fill_way, kTruckWidth / 2});
  }
  return all;
}

double from_trunk(const Polyline& line, Point trunk) {
  double least = distance(line.front(), trunk);
  for (std::size_t i = 1; i < line.size(); ++i)
    least = std::min(least, distance(Segment{line[i - 1], line[i]}, trunk));
  return least;
}

// What of the zone lies under them; `nearest` is lessened to theirs.
Region under(const std::vector<Track>& tracks, Point trunk, double radius, double& nearest) {
  const Region zone = buffered(trunk, radius);
  std::vector<Region> parts;
  for (const Track& t : tracks) {
    if (t.line->size() < 2) continue;
    const double away = from_trunk(*t.line, trunk) - t.half;
    if (away >= radius) continue;
    Region part = intersect(buffered(*t.line, t.half), zone);
    if (area(part) <= kSpeck) continue;
    nearest = std::min(nearest, std::max(0.0, away));
    parts.push_back(std::move(part));
  }
  return unite(parts);
}

}  // namespace

std::vector<RootsDriven> roots_driven(const Plan& plan, const Outcome& outcome) {
  std::vector<RootsDriven> all;
  if (outcome.order == nullptr) return all;
  for (const Feature& tree : plan.site.features) {
    if (tree.kind != FeatureKind::tree || tree.points.empty()) continue;
    const double radius = root_zone_radius(plan.site, tree);
    if (!(radius > 0)) continue;
    RootsDriven found{tree.id, false, false, 0, radius};
    const Region machine =
        under(tracks_of_machine(plan, *outcome.order), tree.points[0], radius, found.nearest);
    const Region trucks = under(tracks_of_trucks(*outcome.order), tree.points[0], radius, found.nearest);
    found.machine = !machine.empty();
    found.trucks = !trucks.empty();
    found.area = area(unite({machine, trucks}));
    if (found.area > kSpeck) all.push_back(found);
  }
  return all;
}

}  // namespace underlawn
