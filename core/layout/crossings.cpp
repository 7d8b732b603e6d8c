// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/crossings.h"

#include <algorithm>
#include <cmath>

#include "layout/zones.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

std::optional<Point> meeting(const Segment& s, const Segment& t) {
  const Point u = s.b - s.a, v = t.b - t.a;
  const double turn = cross(u, v);
  if (std::abs(turn) < 1e-12) return std::nullopt;
  const double along_s = cross(t.a - s.a, v) / turn, along_t = cross(t.a - s.a, u) / turn;
  if (along_s < 0 || along_s > 1 || along_t < 0 || along_t > 1) return std::nullopt;
  return s.a + along_s * u;
}

double angle_between(const Segment& s, const Segment& t) {
  const Point u = s.b - s.a, v = t.b - t.a;
  return std::atan2(std::abs(cross(u, v)), std::abs(dot(u, v)));
}

// The far edge of our trench enters the zone before its middle line does.
double hand_dig_each_way(double angle, double width) {
  return (kToleranceZone + width / 2 * std::cos(angle)) / std::max(1e-6, std::sin(angle));
}

class Finder {
 public:
  Finder(const Site& site, const Wishes& wishes) : site_(site), wishes_(wishes) {}

  void add(const Polyline& line, Conduit conduit, double depth) {
    depth_ = depth;
    for (const Feature& f : site_.features) {
      if (!crossable(f) || f.points.size() < 2) continue;
      const std::size_t sides =
          shape_of(f.kind) == FeatureShape::area ? f.points.size() : f.points.size() - 1;
      for (std::size_t i = 1; i < line.size(); ++i)
        for (std::size_t j = 0; j < sides; ++j)
          meet({line[i - 1], line[i]}, {f.points[j], f.points[(j + 1) % f.points.size()]}, f, conduit);
    }
  }

  std::vector<Crossing> found;

 private:
  void meet(const Segment& ours, const Segment& theirs, const Feature& f, Conduit conduit) {
    const auto at = meeting(ours, theirs);
    if (!at) return;
    const bool known = std::any_of(found.begin(), found.end(), [&](const Crossing& c) {
      return c.feature_id == f.id && c.conduit == conduit && distance(c.at, *at) < 1e-3;
    });
    if (known) return;
    Crossing c;
    c.feature_id = f.id;
    c.conduit = conduit;
    c.at = *at;
    c.angle = angle_between(ours, theirs);
    c.trench_depth = depth_;
    if (f.kind == FeatureKind::utility) {
      c.utility_depth = f.depth;
      c.hand_dig = std::min(kMostHandDig, hand_dig_each_way(c.angle, wishes_.run_width));
    }
    found.push_back(c);
  }

  const Site& site_;
  const Wishes& wishes_;
  double depth_ = 0;  // of the line that is looked at
};

}  // namespace

std::vector<Crossing> crossings_of(const Site& site, const Wishes& wishes, const Header& header,
                                   const SupplyRun& run) {
  Finder finder(site, wishes);
  finder.add(run.line, Conduit::run, run.depth.value_or(wishes.run_depth));
  for (std::size_t i = 0; i < header.legs.size(); ++i)
    finder.add(header.legs[i], Conduit::header, depth_of_leg(header, i, wishes.run_depth));
  return std::move(finder.found);
}

}  // namespace underlawn
